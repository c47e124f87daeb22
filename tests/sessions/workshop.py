"""A folder to run withy in, the same every time: the example designs and plugins, an empty home, a fixed environment."""

import os
import pathlib
import shutil
import subprocess

ROOT = pathlib.Path(__file__).resolve().parents[2]

# Bash functions that sessions may use. `unprivileged` runs a command that file permissions hold for, also under root.
FUNCTIONS = """
unprivileged() {
  if [ "$(id -u)" = 0 ]; then setpriv --reuid=65534 --regid=65534 --clear-groups "$@"; else "$@"; fi
}
"""


class Workshop:
    def __init__(self, folder, withy):
        self.top = pathlib.Path(folder)
        self.top.chmod(0o755)
        self.folder = self.top / "workshop"
        self.folder.mkdir()
        self.folder.chmod(0o777)
        (self.top / "home").mkdir()
        (self.top / "bin").mkdir()
        (self.top / "bin" / "withy").symlink_to(pathlib.Path(withy).resolve())
        (self.top / "functions").write_text(FUNCTIONS)
        for folder in ("designs", "blanks"):
            for source in sorted((ROOT / "examples" / folder).glob("*.txtpb")):
                shutil.copy(source, self.folder)
        for source in sorted((ROOT / "examples/plugins").iterdir()):
            copy = shutil.copytree if source.is_dir() else shutil.copy
            copy(source, self.folder / source.name)
        for source in sorted((ROOT / "tests/sessions/files").iterdir()):
            copy = shutil.copytree if source.is_dir() else shutil.copy
            copy(source, self.folder / source.name)

    def run(self, command):
        """Runs one command line; returns its standard output, standard error (both bytes) and exit status."""
        environment = {
            "PATH": f"{self.top / 'bin'}:{os.environ['PATH']}",
            "HOME": str(self.top / "home"),
            "LC_ALL": "C",
            "TERM": "xterm",
            "BASH_ENV": str(self.top / "functions"),
            "SOURCE_DATE_EPOCH": "1767225600",  # 2026-01-01T00:00:00Z
        }
        for name in ("ASAN_OPTIONS", "UBSAN_OPTIONS"):
            if name in os.environ:
                environment[name] = os.environ[name]
        done = subprocess.run(["bash", "-c", command], cwd=self.folder, env=environment, stdin=subprocess.DEVNULL,
                              capture_output=True, timeout=120, check=False)
        return done.stdout, done.stderr, done.returncode
