"""Starts the window on every sample and reads it as a screen reader does.

usage: tree_test.py PROGRAM SAMPLES. Brings its own display (Xvfb), session bus, accessibility bus and folders. The names
on the picture and in the outline must be those that expected.py works out from the sample's text; nothing that takes
the keyboard may be without a name; what is selected by a click or a key must be told. Exit code 77: cannot run here.
"""
import json, os, shutil, subprocess, sys, tempfile, time
from collections import Counter
from pathlib import Path

LIMIT = 20  # s; only a broken program takes that long
BUS = "/usr/share/dbus-1/services/org.a11y.Bus.service"  # the session bus starts it when it is asked for


def until(ready):
    end = time.monotonic() + LIMIT
    while not (value := ready()) and time.monotonic() < end:
        time.sleep(0.02)
    return value


def missing():
    for tool in ("Xvfb", "xdotool", "dbus-run-session"):
        if not shutil.which(tool):
            return tool
    if not os.path.exists(BUS):
        return "at-spi2-core"
    try:
        import pyatspi
    except ImportError:
        return "python3-pyatspi"
    return None


def outside():
    """A display on a free number, then this script again inside a session bus."""
    if lacking := missing():
        print("skipped: %s is not installed" % lacking)
        return 77
    shown, told = os.pipe()
    display = subprocess.Popen(["Xvfb", "-displayfd", str(told), "-screen", "0", "1440x900x24", "-nolisten", "tcp"],
                               pass_fds=[told], stderr=subprocess.DEVNULL)
    os.close(told)
    with tempfile.TemporaryDirectory() as home, os.fdopen(shown) as number:
        runtime = os.path.join(home, "run")
        os.mkdir(runtime, 0o700)
        env = {"PATH": os.environ["PATH"], "LANG": "C.UTF-8", "HOME": home, "XDG_RUNTIME_DIR": runtime, "TMPDIR": home,
               "DISPLAY": ":" + number.readline().strip(), "QT_QPA_PLATFORM": "xcb", "SNUG_INSIDE": "1",
               "QT_LINUX_ACCESSIBILITY_ALWAYS_ON": "1", "NO_AT_BRIDGE": "1", "PYTHONDONTWRITEBYTECODE": "1"}
        try:
            return subprocess.run(["dbus-run-session", "--", sys.executable] + sys.argv, env=env).returncode
        finally:
            display.terminate()
            display.wait()


def tree(node, closed=()):
    yield node
    for at in range(node.childCount if node.getRole() not in closed else 0):
        child = node.getChildAtIndex(at)
        if child is not None:
            yield from tree(child, closed)


class Window:
    """The program on one sample."""

    def __init__(self, program, sample):
        self.faults = []
        self.process = subprocess.Popen([program, "--sample", sample], stderr=subprocess.DEVNULL)
        self.application = until(self._find)
        self.canvas = self.application and until(lambda: self.first(pyatspi.ROLE_CANVAS))

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.process.kill()
        self.process.wait()
        until(lambda: not self._find())

    def _find(self):
        desktop = pyatspi.Registry.getDesktop(0)
        for at in range(desktop.childCount):
            child = desktop.getChildAtIndex(at)
            try:
                if child is not None and child.get_process_id() == self.process.pid:
                    return child
            except Exception:  # it has just gone
                pass
        return None

    def tree(self):
        """Without what is on the picture and in tables."""
        self.application.clear_cache()
        return tree(self.application, (pyatspi.ROLE_CANVAS, *TABLES))

    def first(self, role, name=None):
        return next((n for n in self.tree() if n.getRole() == role and (name is None or n.name == name)), None)

    def act(self, role, name, action):
        node = self.first(role, name)
        self.check(node is not None, "nothing is called %s" % name)
        if node is None:
            return
        offered = node.queryAction()
        names = [offered.getName(at) for at in range(offered.nActions)]
        self.check(action in names, "%s offers %s" % (name, names))
        if action in names:
            offered.doAction(names.index(action))

    def check(self, holds, fault):
        if not holds:
            self.faults.append(fault)

    def compare(self, what, heard, wanted):
        self.check(heard == wanted, "%s: not told %s, told besides %s" % (what, dict(wanted - heard), dict(heard - wanted)))

    def tool(self, *words):
        subprocess.run(["xdotool", *map(str, words)], check=True, stdout=subprocess.DEVNULL)

    def take_keyboard(self):
        found = subprocess.run(["xdotool", "search", "--onlyvisible", "--pid", str(self.process.pid)],
                               capture_output=True, text=True).stdout.split()
        for window in found:
            subprocess.run(["xdotool", "windowfocus", window], stderr=subprocess.DEVNULL)


def is_in(node, state):
    return node.getState().contains(state)


def picture(window, document):
    nodes = [n for n in window.canvas if n.getRole() in (pyatspi.ROLE_LIST_ITEM, pyatspi.ROLE_IMAGE)]
    window.compare("picture", Counter(n.name for n in nodes), document.on_the_picture())
    window.check(window.canvas.description, "the picture has no description")
    for n in nodes:
        plain_card = " card " in n.name or n.getRole() == pyatspi.ROLE_IMAGE
        window.check(n.description or plain_card, "%s has no description" % n.name)
        window.check(is_in(n, pyatspi.STATE_FOCUSABLE), "%s is not focusable" % n.name)
        window.check("{" not in n.name + n.description, "%s: %s" % (n.name, n.description))
    return nodes


def names_of_controls(window):
    """Of everything that takes the keyboard, wherever in the window it is."""
    for n in window.tree():
        if not is_in(n, pyatspi.STATE_SHOWING) or n.getRole() == pyatspi.ROLE_FRAME:
            continue
        takes = is_in(n, pyatspi.STATE_FOCUSABLE)
        lists = n.getRole() in (*TABLES, pyatspi.ROLE_LIST, pyatspi.ROLE_TOOL_BAR, pyatspi.ROLE_PAGE_TAB_LIST,
                                pyatspi.ROLE_MENU_BAR)
        if (takes or lists) and not n.name.strip():
            above = [n]
            while above[-1].parent is not None and above[-1].getRole() != pyatspi.ROLE_APPLICATION:
                above.append(above[-1].parent)
            window.check(False, "no name: " + " < ".join("%s %r" % (a.getRoleName(), a.name) for a in above[:6]))


def selection(window, nodes):
    """A click, then a key."""
    guest = next((n for n in nodes if n.name.endswith(", machine") and n.queryComponent().getExtents(0).width > 8
                  and not is_in(n, pyatspi.STATE_SELECTED)), None)
    if guest is None:
        return
    window.take_keyboard()
    box = guest.queryComponent().getExtents(pyatspi.DESKTOP_COORDS)
    window.tool("mousemove", box.x + box.width // 5, box.y + 8, "click", 1)  # beside the power mark
    window.check(until(lambda: is_in(guest, pyatspi.STATE_SELECTED)), "a click did not tell %s selected" % guest.name)
    window.check(until(lambda: is_in(guest, pyatspi.STATE_FOCUSED)), "a click did not tell %s focused" % guest.name)
    window.tool("key", "Down")
    window.check(until(lambda: not is_in(guest, pyatspi.STATE_SELECTED)), "%s stays selected" % guest.name)
    window.check(until(lambda: any(is_in(n, pyatspi.STATE_SELECTED) for n in nodes)), "a key selected nothing")


def outline(window, document):
    window.act(pyatspi.ROLE_CHECK_BOX, "Outline", "Toggle")
    view = until(lambda: next((n for n in window.tree() if n.getRole() in TABLES and is_in(n, pyatspi.STATE_SHOWING)), None))
    window.check(view is not None, "the outline does not show")
    if view is None:
        return
    window.take_keyboard()
    window.tool("key", "alt+4", "Home", "asterisk")  # to the outline; what stands below the PC opens
    wanted = document.in_the_outline()
    lacking = {}

    def complete():
        view.clear_cache()
        told = [n.name for n in tree(view)]
        for name, count in wanted.items():
            lacking[name] = count - sum(1 for t in told if t == name or t.startswith(name + ", "))
        return max(lacking.values()) <= 0
    until(complete)
    window.check(max(lacking.values()) <= 0, "outline: not told %s" % {n: c for n, c in lacking.items() if c > 0})


def read(window, document):
    window.check(window.canvas, "the window told nothing")
    if not window.canvas:
        return
    nodes = picture(window, document)
    selection(window, nodes)
    names_of_controls(window)
    outline(window, document)
    names_of_controls(window)
    for sheet in ("Addresses", "Reach"):
        window.act(pyatspi.ROLE_PAGE_TAB, sheet, "Press")
        names_of_controls(window)


def inside(program, folder):
    failed = 0
    pyatspi.Registry.getDesktop(0).childCount  # the buses are there before a program looks for them
    for path in sorted(Path(folder).glob("*.snuglab")):
        started = time.monotonic()
        with Window(program, path.stem) as window:
            read(window, Document(json.loads(path.read_text(encoding="utf-8"))))
        for fault in dict.fromkeys(window.faults):
            print("%s: %s" % (path.stem, fault))
        failed += bool(window.faults)
        print("%s: %s in %.1f s" % (path.stem, "failed" if window.faults else "passed", time.monotonic() - started),
              flush=True)
    return 1 if failed else 0


if __name__ == "__main__":
    if "SNUG_INSIDE" not in os.environ:
        sys.exit(outside())
    import pyatspi
    from expected import Document
    TABLES = (pyatspi.ROLE_TABLE, pyatspi.ROLE_TREE, pyatspi.ROLE_TREE_TABLE)
    sys.exit(inside(*sys.argv[1:3]))
