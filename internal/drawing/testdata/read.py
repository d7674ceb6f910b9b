"""Reads a DXF file by ezdxf and a STEP file by Open CASCADE (gmsh), and prints what they hold."""
import json
import sys

import ezdxf
import gmsh

out = []
gmsh.initialize()
gmsh.option.setNumber("General.Terminal", 0)
for pair in json.load(sys.stdin):
    doc = ezdxf.readfile(pair["dxf"])
    audit = doc.audit()
    points = lambda layer: [list(e.dxf.location)[:2] for e in doc.modelspace().query(f'POINT[layer=="{layer}"]')]
    gmsh.model.add("arm")
    gmsh.model.occ.importShapes(pair["step"], False)
    gmsh.model.occ.synchronize()
    out.append({
        "version": doc.dxfversion,
        "faults": [e.message for e in audit.errors + audit.fixes],
        "entities": sorted({e.dxftype() for e in doc.modelspace()}),
        "layers": sorted({e.dxf.layer for e in doc.modelspace()}),
        "circles": [[*list(e.dxf.center)[:2], e.dxf.radius] for e in doc.modelspace().query('CIRCLE[layer=="OUTLINE"]')],
        "was": points("ORIGINAL"),
        "vertices": [list(gmsh.model.getValue(0, tag, [])) for _, tag in gmsh.model.getEntities(0)],
        "curves": [gmsh.model.getType(1, tag) for _, tag in gmsh.model.getEntities(1)],
    })
    gmsh.model.remove()
json.dump(out, sys.stdout)
