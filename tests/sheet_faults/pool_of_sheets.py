"""The circuits that are drawn: name -> text of the file, or its path where it is of the tree."""

import json
import pathlib
import re
import shutil
import subprocess
import sys
import xml.etree.ElementTree as ElementTree

HERE = pathlib.Path(__file__).resolve()
ROOT = HERE.parents[2]
sys.path.append(str(HERE.parents[1] / "read_back"))

LOT = 40  # of read_back's random circuits, from 10 to 120 components
ORACLE = 100


def tree():
    """(name, path) of every circuit of the tree that is one: with lines, not a part of one."""
    for path in sorted((ROOT / "circuits").rglob("*.xml")):
        text = path.read_text(encoding="utf-8")
        if "<circuit" in text and "<line" in text:
            yield path.relative_to(ROOT / "circuits").with_suffix("").as_posix(), path


def points(path):
    """Ids of the duty points of a circuit."""
    return [point.get("id") for point in ElementTree.parse(path).getroot().iter("point")]


def _assemblies():
    """(file, text of a circuit of it alone) of each ready assembly, every port led to a reservoir;
    the circuit expects the file beside itself."""
    for path in sorted((ROOT / "circuits" / "assemblies").glob("*.xml")):
        outer = re.findall(r'<port id="(\w+)" of=', path.read_text(encoding="utf-8"))
        lines = "".join(f'<line id="N{i}" joins="U1.{port} T1.R{i}"/>'
                        for i, port in enumerate(outer))
        ports = "".join(f'<port id="R{i}" level="below"/>' for i in range(len(outer)))
        yield path, (
            f'<circuit format="1" title="{path.stem}"><use id="U1" file="{path.name}"/>'
            f'<reservoir id="T1">{ports}</reservoir>{lines}</circuit>')


def _read_back():
    import random_circuits
    import variants
    for name, text in variants.circuits().items():
        yield f"variant {name}", text
    for seed, text in random_circuits.circuits(LOT):
        yield f"lot {seed}", text


def _oracle():
    # In a process of its own: modules there have the names of read_back's.
    code = "import json, pool; print(json.dumps({**pool.sound_circuits(), **pool.circuits()}))"
    made = json.loads(subprocess.run([sys.executable, "-B", "-c", code], check=True, text=True,
                                     capture_output=True, cwd=HERE.parents[1] / "oracle").stdout)
    for name in list(made)[:ORACLE]:
        yield f"oracle {name}", made[name]


def circuits(program, folder):
    """(name, path of the file) of each; those not of the tree are written to the folder."""
    import variants
    for name, text in variants.PARTS.items():
        (folder / f"{name}.xml").write_text(text, encoding="utf-8")
    made = list(tree())
    for drive in ("traction", "hoist", "stationary"):
        made.append((f"new {drive}", subprocess.run([program, "new", drive], check=True, text=True,
                                                    capture_output=True).stdout))
    for path, text in _assemblies():
        shutil.copy(path, folder)
        made.append((f"assembly {path.stem}", text))
    made += [*_read_back(), *_oracle()]
    out = []
    for number, (name, text) in enumerate(made):
        path = text
        if isinstance(text, str):
            path = folder / f"sheet-{number}.xml"
            path.write_text(text, encoding="utf-8")
        out.append((name, path))
    return out
