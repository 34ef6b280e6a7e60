"""usage: sizes.py FILE... Prints what outgrew the style (DEVELOPERS.md, "Sizes"): header 150 lines, source 300, function
40 lines, 5 parameters; a second look at these, a split at 250, 450, 70, 6. Functions are found by the layout that
clang-format gives: a head in the first column that ends in "{", a "}" alone in the first column."""
import re, sys

LOOK = {"header": 150, "source": 300, "function": 40, "parameters": 5}
SPLIT = {"header": 250, "source": 450, "function": 70, "parameters": 6}


def parameters(head):
    inner = head[head.find("(") + 1:]
    depth, count = 0, 1 if inner.lstrip()[:1] not in (")", "") else 0
    for sign in inner:
        depth += {"(": 1, "<": 1, "{": 1, "[": 1, ")": -1, ">": -1, "}": -1, "]": -1}.get(sign, 0)
        if depth < 0:
            break
        count += sign == "," and depth == 0
    return count


def functions(lines):
    head, start = [], 0
    for n, line in enumerate(lines, 1):
        if line == "}" and start:
            yield " ".join(head), start, n - start + 1
            head, start = [], 0
        elif not start and line[:1] not in ("", "}", "#", "/"):
            head = (head if line[0] == " " else []) + [line.strip()]
            joined = " ".join(head)
            if line.endswith("{") and "(" in joined and not re.match(r"(namespace|struct|class|enum|TEST|RC_|BENCH)", joined):
                start = n
        elif not start:
            head = []


def measures(name, lines):
    kind = "header" if name.endswith(".h") else "source"
    yield name, kind, len(lines)
    for head, start, length in functions(lines):
        what = re.sub(r"\(.*", "", head).split(" ")[-1]
        yield "%s:%d: %s" % (name, start, what), "function", length
        yield "%s:%d: %s" % (name, start, what), "parameters", parameters(head)


look = split = 0
for path in sys.argv[1:]:
    with open(path, encoding="utf-8") as f:
        content = f.read().splitlines()
    for where, kind, value in measures(path, content):
        if path.startswith("tests/") and kind in ("header", "source"):
            continue
        if value > SPLIT[kind]:
            print("warning: split: %s: %s of %d (limit %d)" % (where, kind, value, SPLIT[kind]))
            split += 1
        else:
            look += value > LOOK[kind]
print("%d places to split, %d to look at twice" % (split, look))
