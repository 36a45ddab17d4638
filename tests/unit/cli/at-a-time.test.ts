import { expect, test } from 'vitest';
import { atATime } from '../../../src/cli/at-a-time.mjs';

/** A task that ends when it is told. */
function toldTask() {
  let end = (failed: boolean) => void failed;
  let running = false;
  const task = () => {
    running = true;
    return new Promise<void>((resolve, reject) => {
      end = (failed) => {
        running = false;
        if (failed) reject(new Error('told to fail'));
        else resolve();
      };
    });
  };
  return { task, end: (failed = false) => end(failed), running: () => running };
}

const settled = () => new Promise((resolve) => setTimeout(resolve));

test('no more run at a time than may, and the next one starts when one ends, even by an error', async () => {
  const onOne = atATime(2);
  const tasks = [0, 1, 2, 3].map(toldTask);
  const ends = tasks.map(({ task }) =>
    onOne(task).then(
      () => 'done',
      () => 'failed'
    )
  );
  const running = () => tasks.map((task) => task.running());
  await settled();
  expect(running()).toEqual([true, true, false, false]);
  tasks[1].end(true);
  await settled();
  expect(running()).toEqual([true, false, true, false]);
  tasks[0].end();
  tasks[2].end();
  await settled();
  expect(running()).toEqual([false, false, false, true]);
  tasks[3].end();
  expect(await Promise.all(ends)).toEqual(['done', 'failed', 'done', 'done']);
});

test('a place that was free for a while is taken at once', async () => {
  const onOne = atATime(1);
  expect(await onOne(() => Promise.resolve(1))).toBe(1);
  expect(await onOne(() => Promise.resolve(2))).toBe(2);
});
