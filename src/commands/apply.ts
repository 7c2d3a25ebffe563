import {text as textOf} from 'node:stream/consumers';
import {readRecords} from '../exchange/records-file.ts';
import {textIn} from '../exchange/text-file.ts';
import {record} from '../work/record.ts';
import {type Command, examples} from './command.ts';

export const command: Command = {
  declare(command) {
    command.argument('<file>', 'a JSON array of records, or one JSON object a line; - reads standard input');
    command.option('--sure', 'write them down although some are unusual');
    examples(command, 'apply season.json', 'apply - < records.jsonl');
  },
  async run(invocation, [file = '-'], {sure}) {
    const name = file === '-' ? 'standard input' : file;
    const records = readRecords(file === '-' ? await textOf(process.stdin) : textIn(file), name);
    const {applied} = await record(
      invocation,
      records.map(({value}) => (sure === true && isObject(value) ? {...value, sure} : value)),
      index => records[index]!.where,
    );
    invocation.answer(applied, () =>
      applied.passedOver === 0
        ? `${applied.applied} records applied`
        : `${applied.applied} records applied, ${applied.passedOver} passed over (applied before)`,
    );
  },
};

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
