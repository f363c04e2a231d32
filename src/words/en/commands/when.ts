/** When something comes back, told from now. */
export const when = {
  now: 'now',
  inMinutes: (minutes: number) => `in ${minutes} minutes`,
  inHours: (hours: number) => `in ${hours} hours`,
  tomorrow: 'tomorrow',
  inDays: (days: number) => `in ${days} days`,
  inMonths: (months: number) => `in ${months} months`,
};
