/** Required before a program: at its end it writes down the milliseconds of processor time that it took, into the file named. */
const { writeFileSync } = require('node:fs');

const { POLEWISE_PROCESSOR_TIME: file = '' } = process.env;
process.on('exit', () => {
  const { user, system } = process.cpuUsage();
  writeFileSync(file, String((user + system) / 1000));
});
