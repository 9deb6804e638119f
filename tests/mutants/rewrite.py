"""Where tests/mutants/run changes a source, and how: every change stands in the rewritten text at once, off until
its number is asked for (switch.hpp). Works on text as clang-format leaves it: binary operators stand between
blanks, brackets of templates don't."""
import re

RELATIONS = {"<": ("lt", ["<=", ">"]), "<=": ("le", ["<", ">"]), ">": ("gt", [">=", "<"]), ">=": ("ge", [">", "<"]),
             "==": ("eq", ["!="]), "!=": ("ne", ["=="]), "+": ("add", ["-"]), "-": ("sub", ["+"]), "*": ("mul", ["/"])}
# `a < lt(1, 2) > b`: how a changed operator is closed
CLOSES = {"<": ">", ">": "<", "<=": "<=", ">=": ">=", "==": "==", "!=": "!=", "+": "+", "-": "-", "*": "*"}
CALLS = {"std::min(": ("std::min", "std::max"), "std::max(": ("std::max", "std::min"),
         "std::all_of(": ("std::all_of", "std::any_of"), "std::any_of(": ("std::any_of", "std::all_of"),
         "longer(": ("longer", "shorter"), "shorter(": ("shorter", "longer")}
# what a test would need a week for, what only says how something is said, and what the compiler must know
NOT_IN = re.compile(r"^\s*(#|using|namespace|template|static_assert|throw|case|\[\[|friend)|operator|\bconstexpr\b|"
                    r"<< |>> |\boverride\b|\brequires\b|\bconcept\b|\benum\b|std::get<|std::array<")


class site:
    """One change: its number, its line and what the line would read."""

    def __init__(self, number, line, was, reads, lines=()):
        self.number, self.line, self.was, self.reads = number, line, was.strip(), reads.strip()
        self.lines = lines or (line,)


def masked(text):
    """The text with strings, characters and comments blanked, at the same places."""
    out = re.sub(r'//[^\n]*|/\*.*?\*/|"(\\.|[^"\\\n])*"|(?<![0-9A-Fa-f])\'(\\.|[^\'\\\n])\'',
                 lambda m: re.sub(r"[^\n]", "\0", m[0]), text, flags=re.S)
    return out


def enum_lines(lines):
    out, inside = set(), False
    for n, line in enumerate(lines):
        inside = inside or re.search(r"\benum\b", line) is not None
        if inside:
            out.add(n)
        if inside and "}" in line:
            inside = False
    return out


class rewriter:
    """One file: `sites` and, by `text(without)`, the text with all changes but those on some lines."""

    def __init__(self, source, first_number, dropped=frozenset()):
        self.source, self.code = source, masked(source)
        self.lines, self.code_lines = source.split("\n"), self.code.split("\n")
        self.start = [0]
        for line in self.lines:
            self.start.append(self.start[-1] + len(line) + 1)
        self.next, self.dropped = first_number, dropped
        enums = enum_lines(self.code_lines)
        self.skip = {n for n, line in enumerate(self.code_lines) if n in enums or NOT_IN.search(line)}
        self.sites, self.edits = [], []  # edits: (from, to, order, text)
        for n in range(len(self.lines)):
            if n not in self.skip and n not in dropped:
                self.of_line(n)
        self.chains()

    def number(self, n, old, new, at, lines=()):
        line = self.lines[n]
        self.sites.append(site(self.next, n, line, line[:at] + new + line[at + len(old):], lines))
        self.next += 1
        return self.next - 1

    def replace(self, n, at, length, text):
        self.edits.append((self.start[n] + at, self.start[n] + at + length, 0, text))

    def of_line(self, n):
        code = self.code_lines[n]
        for m in re.finditer(r"(?<= )(<=|>=|==|!=|<|>|\+|-|\*)(?= )", code):
            if re.match(r"^\s*$", code[:m.start()]):
                continue  # the left side stands on the line before
            name, others = RELATIONS[m[0]]
            ids = [self.number(n, m[0], other, m.start()) for other in others]
            self.replace(n, m.start(), len(m[0]),
                         f"{m[0]} mutant::{name}({', '.join(map(str, ids))}) {CLOSES[m[0]]}")
        for m in re.finditer(r"(?<=\w) (\+=|-=) ", code):
            end = self.end_of(self.start[n] + m.end())
            if end is not None:
                k = self.number(n, m[1], "-=" if m[1] == "+=" else "+=", m.start(1))
                self.edits.append((self.start[n] + m.end(), self.start[n] + m.end(), 0, f"mutant::minus_if({k}, "))
                self.edits.append((end, end, 0, ")"))
        for m in re.finditer(r"(?<![\w:.])(std::min|std::max|std::all_of|std::any_of|longer|shorter)\((?!\))", code):
            is_, other = CALLS[m[0]]
            k = self.number(n, is_, other, m.start())
            self.replace(n, m.start(), len(m[0]), "[&](auto&&... v_) { return mutant::on(%d) ? %s(v_...) : %s(v_...); }("
                         % (k, other, is_))
        for m in re.finditer(r"return (true|false);", code):
            k = self.number(n, m[1], "false" if m[1] == "true" else "true", m.start(1))
            self.replace(n, m.start(1), len(m[1]), ("!" if m[1] == "true" else "") + f"mutant::on({k})")
        for m in re.finditer(r"if \((!?)([a-z_.>\-]+|[a-z_.>\-]+\([a-z_, .]*\))\)", code):
            k = self.number(n, m[1] + m[2], ("" if m[1] else "!") + m[2], m.start(1))
            self.edits.append((self.start[n] + m.start(1), self.start[n] + m.start(1), 0, f"mutant::on({k}) != bool("))
            self.edits.append((self.start[n] + m.end(2), self.start[n] + m.end(2), 0, ")"))
        for m in re.finditer(r"(?<![\w.\"'])(?<!e-)(\d+\.\d+|[1-9])(?![\w.'])", code):
            if re.search(r"(?<! )<[^<>;() ]*$", code[:m.start()]) or re.match(r"\s*(;|=)?\s*$", code[m.end():]) and ":" in \
                    code[max(0, m.start() - 3):m.start()]:
                continue  # of a template, or a bit-field
            k = self.number(n, m[0], str(int(m[0]) + 1) if m[0].isdigit() else repr(float(m[0]) + 1.0), m.start())
            self.replace(n, m.start(), len(m[0]), f"mutant::lit({k}, {m[0]})")
        for m in re.finditer(r"\bcontinue;", code):
            k = self.number(n, "continue", "break", m.start())
            self.replace(n, m.start(), len(m[0]), "{ if (mutant::on(%d)) break; continue; }" % k)

    def end_of(self, at):
        depth = 0
        for i in range(at, len(self.code)):
            c = self.code[i]
            if c in "([{":
                depth += 1
            elif c in ")]}":
                if depth == 0:
                    return i
                depth -= 1
            elif c == ";" and depth == 0:
                return i
        return None

    # --- && and ||: by their operands, which stay evaluated no further than they were -----------------------

    def chains(self):
        code = self.code
        stack = [0]
        segments = []  # (from, to) of what stands between boundaries at one depth
        begin = [0]
        i = 0
        while i < len(code):
            c = code[i]
            if c in "([{":
                stack.append(i)
                begin.append(i + 1)
            elif c in ")]}":
                segments.append((begin.pop(), i))
                stack.pop()
                if not begin:
                    begin = [i + 1]
                if c == "}":
                    # after a block a new statement begins; after a braced value the expression goes on
                    if re.match(r"\s*(\n|$)", code[i + 1:i + 3]) and not re.match(r"\s*(&&|\|\|)", code[i + 1:]):
                        begin[-1] = i + 1
            elif c in ",;?" or (c == ":" and code[i - 1] != ":" and code[i + 1:i + 2] != ":"):
                segments.append((begin[-1], i))
                begin[-1] = i + 1
            elif c == "=" and code[i + 1:i + 2] != "=" and code[i - 1] not in "=!<>":
                segments.append((begin[-1], i - 1 if code[i - 1] in "+-*/&|" else i))
                begin[-1] = i + 1
            i += 1
        for a, b in segments:
            self.segment(a, b)

    def split(self, a, b, operator):
        """Where the operator stands at that depth."""
        depth, out, code = 0, [], self.code
        for i in range(a, b - 1):
            c = code[i]
            if c in "([{":
                depth += 1
            elif c in ")]}":
                depth -= 1
            elif depth == 0 and code[i:i + 2] == operator and code[i - 1] in " \n" and code[i + 2] in " \n":
                out.append(i)
        return out

    def segment(self, a, b):
        m = re.match(r"[\s\0]*(return\b|else\b|do\b)?[\s\0]*", self.code[a:b])
        a += m.end()
        while b > a and self.code[b - 1] in " \n\0":
            b -= 1
        ors = self.split(a, b, "||")
        bounds = [a - 2] + ors + [b]
        for x, y in zip(bounds, bounds[1:]):
            self.chain(x + 2, y, self.split(x + 2, y, "&&"), "&&")
        self.chain(a, b, ors, "||")

    def chain(self, a, b, at, operator):
        if not at:
            return
        first, last = self.line_of(a), self.line_of(b)
        span = tuple(range(first, last + 1))
        if any(n in self.skip or n in self.dropped for n in span):
            return
        while self.code[a] in " \n\0":
            a += 1
        while self.code[b - 1] in " \n\0":
            b -= 1
        other = "||" if operator == "&&" else "&&"
        ids = [self.number(self.line_of(i), operator, other, i - self.start[self.line_of(i)], span) for i in at]
        # a && b, changed: a || b = !(!a && !b); and the other way round
        order = 1 if operator == "&&" else 2
        self.edits.append((a, a, -order, "(((" * len(at) + "bool("))
        for i, k in zip(at, ids):
            closing = ")" if i == at[0] else f") != mutant::on({ids[at.index(i) - 1]}))) != mutant::on({ids[at.index(i) - 1]}))"
            self.edits.append((i, i + 2, 0, closing + f" != mutant::on({k})) {operator} (bool("))
        k = ids[-1]
        self.edits.append((b, b, order, f") != mutant::on({k}))) != mutant::on({k}))"))

    def line_of(self, at):
        low, high = 0, len(self.lines)
        while high - low > 1:
            middle = (low + high) // 2
            low, high = (middle, high) if self.start[middle] <= at else (low, middle)
        return low

    def text(self):
        out, at = [], 0
        # at one place: what closes before what opens; of those that open the outer (of ||) first
        for begin, end, order, text in sorted(self.edits, key=lambda e: (e[0], e[1], e[2])):
            out.append(self.source[at:begin])
            out.append(text)
            at = end
        out.append(self.source[at:])
        return "".join(out)
