// Answers every case of predictions.json anew and writes the file again:
//   node tests/reference/predictions.mjs [CHECKOUT]
// CHECKOUT is the folder of the program whose `predict` is asked, this one unless told. The benches and the flags are those of
// the file: to add one, write it there without an answer. Numbers are kept to 12 digits.
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const here = import.meta.dirname;
const checkout = path.resolve(process.argv[2] ?? path.join(here, '../..'));
const file = path.join(here, 'predictions.json');
const { benches, cases } = JSON.parse(readFileSync(file, 'utf8'));

function answered({ bench, flags }) {
  const input = JSON.stringify(benches[bench]);
  const command = [path.join(checkout, 'src/cli/predict.mjs'), '-', ...flags];
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { input, encoding: 'utf8' });
  if (status === 2 && stdout === '') return { bench, flags, refusal: stderr.trimEnd() };
  if (status !== 0) throw new Error(`predict ${flags.join(' ')} on "${bench}" failed: ${stderr}`);
  if (flags.includes('csv')) return { bench, flags, csv: stdout.trimEnd().split('\n').map(shortCells) };
  return { bench, flags, json: JSON.parse(stdout, (_, value) => (typeof value === 'number' ? short(value) : value)) };
}

function short(number) {
  return Number(number.toPrecision(12));
}

function shortCells(line) {
  return line.replaceAll(/(?<=^|,)-?\d[\d.e+-]*(?=,|$)/g, (cell) => String(short(Number(cell))));
}

const lines = (list) => list.map((each) => `\n  ${each}`).join(',');
const benchLines = Object.entries(benches).map(([name, bench]) => `${JSON.stringify(name)}: ${JSON.stringify(bench)}`);
const caseLines = cases.map((each) => JSON.stringify(answered(each)));
const what = 'What `predict` answers: benches of all kinds, and for each case its bench, its flags and the answer';
const tool = `predictions.mjs, Node ${process.versions.node}`;
writeFileSync(
  file,
  `{\n "what": ${JSON.stringify(what)},\n "tool": ${JSON.stringify(tool)},\n "benches": {${lines(benchLines)}\n },\n "cases": [${lines(caseLines)}\n ]\n}\n`
);
