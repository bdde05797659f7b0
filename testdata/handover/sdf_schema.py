"""What may and must stand in the elements of SDF 1.9 that core/handover writes, from the schema itself: Debian's sdformat-sdf
12.3.0, of https://github.com/gazebosim/sdformat. The argument is its folder 1.9:

    python3 testdata/handover/sdf_schema.py /usr/share/sdformat12/1.9 > testdata/handover/sdf-1.9.json

By path from the root: "may" lists the children, "must" those without which an element is not whole, "attributes" the ones it must have.
The golden lift.sdf files, and scenes with a mesh, a rod, a point, mixed holds and hostile names, were found valid by the check of
libsdformat 12.3.0 (cmdCheck, what `ign sdf --check` calls) on 2026-11-25.
"""
import glob, json, os, sys
import xml.etree.ElementTree as xml

folder = sys.argv[1]
here = os.path.dirname(os.path.abspath(__file__))

def children(element):
    """The elements in an element, those of included files too; with how often they are required."""
    for e in element:
        if e.tag == "element" and e.get("name"):
            yield e.get("name"), e, e.get("required")
        elif e.tag == "include":
            inner = xml.parse(os.path.join(folder, e.get("filename"))).getroot()
            yield inner.get("name"), inner, e.get("required")

out = {}

def note(path, schema, found):
    kinds = list(children(schema))
    out[path] = {"may": sorted({n for n, _, r in kinds if r != "-1"}), "must": sorted({n for n, _, r in kinds if r in ("1", "+")}),
        "attributes": sorted(a.get("name") for a in schema.findall("attribute") if a.get("required") == "1")}
    if schema.find("element[@copy_data='true']") is not None:
        out[path]["free"] = True  # a plugin's own
        return
    for name, inner, _ in kinds:
        if any(f.tag == name for f in found):
            note(path + "/" + name, inner, [x for f in found if f.tag == name for x in f])

roots = [xml.parse(p).getroot() for p in sorted(glob.glob(os.path.join(here, "../golden/handover/*/lift.sdf")))]
note("sdf", xml.parse(os.path.join(folder, "root.sdf")).getroot(), [x for r in roots for x in r])
print(json.dumps(out, indent=1, sort_keys=True))
