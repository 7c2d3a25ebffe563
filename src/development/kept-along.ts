// What was made of something along one course is kept as long as both are: lots of one unit ask for the same.
import type {Temperatures} from './dose-course.ts';

/** The same function, which makes each thing once. */
export function keptAlong<Of extends object, Made>(
  make: (of: Of, course: Temperatures) => Made,
): (of: Of, course: Temperatures) => Made {
  const courses = new WeakMap<Float64Array, WeakMap<Of, Made>>();
  return (of, course) => {
    let kept = courses.get(course.temperatureC);
    if (kept === undefined) {
      kept = new WeakMap();
      courses.set(course.temperatureC, kept);
    }
    let made = kept.get(of);
    if (made === undefined) {
      made = make(of, course);
      kept.set(of, made);
    }
    return made;
  };
}
