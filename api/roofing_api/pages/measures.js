// Measurements as text for people, by the same rules as the service's own sheets: feet, inches and
// the nearest 1/16 from 4 ft on, whole millimetres, other numbers to about three figures.

const FEET_FROM = 48;
const SIXTEENTHS = [
  "", "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16",
  "1/2", "9/16", "5/8", "11/16", "3/4", "13/16", "7/8", "15/16",
];

/** Write an amount of an answer, such as {value: 112, unit: "in"}. */
export function written({ value, unit }) {
  const write = WRITERS[unit];
  return write ? write(value) : `${figures(value)} ${unit}`;
}

const WRITERS = {
  in: inches,
  mm: (value) => `${signed(value, Math.floor(Math.abs(value) + 0.5))} mm`,
  fl_oz: (value) => `${figures(value)} fl oz`,
  count: count,
  1: count,
  "rise in 12": (value) => `${figures(value)}:12`,
  percent: (value) => `${figures(value)} %`,
  square: (value) => `${fixed(value, 2)} squares`,
};

function signed(value, size) {
  return value < 0 && size ? `-${size}` : `${size}`;
}

function inches(value) {
  const sixteenths = Math.floor(Math.abs(value) * 16 + 0.5);
  const sign = value < 0 && sixteenths ? "-" : "";
  const whole = Math.floor(sixteenths / 16);
  const part = SIXTEENTHS[sixteenths % 16];
  if (whole < FEET_FROM) return `${sign}${joined(whole, part) || "0 in"}`;
  return `${sign}${[`${Math.floor(whole / 12)} ft`, joined(whole % 12, part)].filter(Boolean).join(" ")}`;
}

function joined(whole, part) {
  const words = [whole || "", part].filter(Boolean);
  return words.length ? `${words.join(" ")} in` : "";
}

function count(value) {
  return Number.isInteger(value) ? `${value}` : figures(value);
}

function figures(value) {
  const size = Math.abs(value);
  const text = fixed(value, size < 10 ? 2 : size < 100 ? 1 : 0);
  const short = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return short === "-0" ? "0" : short;
}

/** Write with so many decimals; exactly half of the last one goes to the even neighbour. */
function fixed(value, decimals) {
  const text = value.toFixed(decimals);
  const beyond = value.toFixed(60).split(".")[1].slice(decimals);
  if (!/^50*$/.test(beyond) || Number(text.at(-1)) % 2 === 0) return text;
  return (value - (Math.sign(value) * 0.5) / 10 ** decimals).toFixed(decimals);
}
