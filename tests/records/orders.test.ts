// Which order a name says its animal is of. Names in plain words are common practice, no source.
import {expect, test} from 'vitest';
import {kinOf} from '../../src/records/orders.ts';
import {bundled} from '../profiles/bundled.ts';

test.each([
  ['Lepidoptera', {order: 'Lepidoptera'}],
  ['Tachinidae indet.', {order: 'Diptera', family: 'Tachinidae'}],
  ['two tachinids', {order: 'Diptera', family: 'Tachinidae'}],
  ['Chalcidoidea', {order: 'Hymenoptera'}],
  ['Araneae', {order: 'Araneae'}],
  ['fly', {order: 'Diptera'}],
  ['Flies', {order: 'Diptera'}],
  ['a moth fly', {order: 'Diptera'}],
  ['dragon fly', {order: 'Odonata'}],
  ['butterflies', {order: 'Lepidoptera'}],
  ['wasp beetle', {order: 'Coleoptera'}],
  ['caddis fly', {order: 'Trichoptera'}],
  ['mosquito', {order: 'Diptera', family: 'Culicidae'}],
  ['ladybirds', {order: 'Coleoptera', family: 'Coccinellidae'}],
  ['thrips', {order: 'Thysanoptera'}],
])('%s', (name, kin) => {
  expect(kinOf(name)).toEqual(kin);
});

test('a genus is told by the profile of one of its species; what nobody knows is not guessed', () => {
  expect(kinOf('Exorista sp.')).toBeUndefined();
  expect(kinOf('Exorista sp.', [bundled('exorista-mella')])).toEqual({
    order: 'Diptera',
    family: 'Tachinidae',
  });
  expect(kinOf('Pieris cf. rapae', [bundled('exorista-mella')])).toBeUndefined();
  expect(kinOf('something small', [bundled('exorista-mella')])).toBeUndefined();
});
