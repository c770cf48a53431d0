"""Times over size as a small SVG: both axes logarithmic, so that a power of the size is a straight line and its slope the exponent."""
import math
from xml.sax.saxutils import escape

RIGHT, HEIGHT = 600, 480
LEFT, TOP, BOTTOM, LABELS = 84, 56, 64, 300
LINE_PX, LETTER_PX = 18, 7.8
LOOKS = [("#0063a3", "", "circle"), ("#b34700", "7 4", "square"), ("#3d6b00", "2 4", "triangle"), ("#7a3b8f", "10 3 2 3", "diamond"), ("#333333", "14 4", "circle"), ("#a0002a", "4 2", "square"), ("#00696b", "1 3", "triangle")]


def exponent(points):
    """The power of the size with which the time grows: the slope of the straight line with the least squares through the logarithms."""
    xs, ys = [math.log(n) for n, _ in points], [math.log(ms) for _, ms in points]
    x0, y0 = sum(xs) / len(xs), sum(ys) / len(ys)
    spread = sum((x - x0) ** 2 for x in xs)
    return sum((x - x0) * (y - y0) for x, y in zip(xs, ys)) / spread if spread else 0


class Axis:
    """A logarithmic axis whose ends are at 1, 2 or 5 times a power of ten."""

    def __init__(self, values, at_low, at_high):
        self.at_low, self.at_high = at_low, at_high
        low, high = min(values), max(values)
        steps = [m * 10.0 ** e for e in range(math.floor(math.log10(low)) - 1, math.ceil(math.log10(high)) + 2) for m in (1, 2, 5)]
        self.low = max(s for s in steps if s <= low * 1.000001)
        self.high = min(s for s in steps if s >= high * 0.999999 and s > self.low)
        inside = [s for s in steps if self.low <= s <= self.high]
        whole = [s for s in inside if abs(math.log10(s) - round(math.log10(s))) < 1e-9]
        self.ticks = inside if len(inside) <= 8 or len(whole) < 3 else whole

    def of(self, value):
        share = math.log(value / self.low) / math.log(self.high / self.low)
        return self.at_low + share * (self.at_high - self.at_low)


def number(value):
    return f"{value:,.0f}" if value >= 1 else f"{value:.6f}".rstrip("0")


def mark(kind, x, y, colour):
    r = 4.5
    if kind == "circle":
        return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{r}" fill="{colour}"/>'
    if kind == "square":
        return f'<rect x="{x - r:.1f}" y="{y - r:.1f}" width="{2 * r}" height="{2 * r}" fill="{colour}"/>'
    corners = [(x, y - r - 1), (x + r + 1, y + r), (x - r - 1, y + r)] if kind == "triangle" else [(x, y - r - 1), (x + r + 1, y), (x, y + r + 1), (x - r - 1, y)]
    return f'<path d="M{" L".join(f"{a:.1f} {b:.1f}" for a, b in corners)} Z" fill="{colour}"/>'


def apart(wanted):
    """Heights of labels near those wanted, none nearer to another than a line, all within the picture."""
    order = sorted(range(len(wanted)), key=lambda i: wanted[i])
    got = {}
    low = TOP + 4
    for i in order:
        got[i] = max(wanted[i], low)
        low = got[i] + LINE_PX
    high = HEIGHT - BOTTOM
    for i in reversed(order):
        got[i] = min(got[i], high)
        high = got[i] - LINE_PX
    return [got[i] for i in range(len(wanted))]


def grid(x, y, right, across, upward):
    lines = []
    for tick in x.ticks:
        at = x.of(tick)
        lines.append(f'<line x1="{at:.1f}" y1="{TOP}" x2="{at:.1f}" y2="{HEIGHT - BOTTOM}" stroke="#d0d0d0"/><text x="{at:.1f}" y="{HEIGHT - BOTTOM + 20}" text-anchor="middle">{number(tick)}</text>')
    for tick in y.ticks:
        at = y.of(tick)
        lines.append(f'<line x1="{LEFT}" y1="{at:.1f}" x2="{right}" y2="{at:.1f}" stroke="#d0d0d0"/><text x="{LEFT - 8}" y="{at + 4.5:.1f}" text-anchor="end">{number(tick)}</text>')
    middle = TOP + (HEIGHT - BOTTOM - TOP) / 2
    lines.append(f'<rect x="{LEFT}" y="{TOP}" width="{right - LEFT}" height="{HEIGHT - BOTTOM - TOP}" fill="none" stroke="#333333"/>')
    lines.append(f'<text x="{(LEFT + right) / 2:.1f}" y="{HEIGHT - 18}" text-anchor="middle">{escape(across)}</text>')
    lines.append(f'<text transform="translate(20 {middle:.1f}) rotate(-90)" text-anchor="middle">{escape(upward)}</text>')
    return lines


def picture(title, across, upward, series):
    """The file's text. Series are pairs of a name and its points (size, time), each with two points at least."""
    right = RIGHT
    width = right + max(LABELS, 40 + math.ceil(LETTER_PX * max(len(name) + 5 for name, _ in series)))
    x = Axis([n for _, points in series for n, _ in points], LEFT, right)
    y = Axis([t for _, points in series for _, t in points], HEIGHT - BOTTOM, TOP)
    heights = apart([y.of(points[-1][1]) for _, points in series])
    body = grid(x, y, right, across, upward)
    for i, ((name, points), label) in enumerate(zip(series, heights)):
        colour, dash, kind = LOOKS[i % len(LOOKS)]
        ends = [(x.of(n), y.of(t)) for n, t in points]
        body.append(f'<polyline points="{" ".join(f"{a:.1f},{b:.1f}" for a, b in ends)}" fill="none" stroke="{colour}" stroke-width="2" stroke-dasharray="{dash}"/>'.replace(' stroke-dasharray=""', ""))
        body += [mark(kind, a, b, colour) for a, b in ends]
        body.append(f'<path d="M{ends[-1][0] + 7:.1f} {ends[-1][1]:.1f} L{right + 16} {label:.1f}" fill="none" stroke="{colour}" stroke-width="0.8"/>')
        body.append(f'<text x="{right + 20}" y="{label + 4.5:.1f}" fill="{colour}">{escape(name)}: n<tspan dy="-5" font-size="10">{exponent(points):.1f}</tspan></text>')
    words = "; ".join(f"{name} grows as n to the power {exponent(points):.1f}" for name, points in series)
    return "\n".join([
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{HEIGHT}" viewBox="0 0 {width} {HEIGHT}" role="img" font-family="DejaVu Sans, Verdana, sans-serif" font-size="13" fill="#111111">',
        f"<title>{escape(title)}</title>", f"<desc>{escape(words)}.</desc>",
        f'<rect width="{width}" height="{HEIGHT}" fill="#ffffff"/>', f'<text x="{LEFT}" y="30" font-size="16" font-weight="bold">{escape(title)}</text>',
        *body, "</svg>", ""])
