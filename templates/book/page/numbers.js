// Numbers within what is written in an input: moved by a key, everything round them left as it is.

const WITHIN_TEXT = /(?:(\d+)[- ])?(\d+)\/(\d+)|\d+(?:\.\d+)?/g;

/** A fraction, with its whole number where it has one, moved by one of its parts: `3-1/2` to `4`, `1/4` to `2/4`. */
function fraction(whole, over, under, by) {
  const parts = Number(whole ?? 0) * under + Number(over) + by;
  const [ones, rest] = [Math.floor(parts / under), parts % under];
  if (rest === 0) return String(ones);
  return ones === 0 ? `${rest}/${under}` : `${ones}-${rest}/${under}`;
}

/** A number moved by one of its last decimal, as many figures as before: `10` to `11`, `3.5` to `3.6`, `09` to `10`. */
function decimal(own, by) {
  const decimals = own.split(".")[1]?.length ?? 0;
  const unit = 10 ** decimals;
  const text = ((Math.round(Number(own) * unit) + by) / unit).toFixed(decimals);
  return own.startsWith("0") ? text.padStart(own.length, "0") : text;
}

/** True where a hyphen before the place is a sign: nothing that it could join stands before it. */
const isNegative = (before) => /(^|[\s,(\[])-$/.test(before);

/**
 * The text with the number at or before the place moved by one, and where the number ends; `null` where there is no number,
 * or where it would change its sign.
 */
export function moved(text, place, by) {
  const numbers = [...text.matchAll(WITHIN_TEXT)];
  const found = numbers.findLast((n) => n.index <= place) ?? numbers[0];
  if (!found) return null;
  const [own, whole, over, under] = found;
  const before = text.slice(0, found.index);
  const way = isNegative(before) ? -by : by;
  const size = under ? Number(whole ?? 0) + over / under : Number(own);
  if (Number(under) === 0 || (size === 0 && way < 0)) return null;
  const next = under ? fraction(whole, over, Number(under), way) : decimal(own, way);
  if (next.startsWith("-")) return null;
  return { text: before + next + text.slice(found.index + own.length), at: before.length + next.length };
}
