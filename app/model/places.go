package model

import (
	"cmp"
	"fmt"

	"toewright/internal/study"
)

// mountsOf lists what a study states of a side by its place that is no hardpoint: spring,
// damper, and the face of the steering arm.
func mountsOf(d *study.Document, side study.Side) (rows []PointRow) {
	add := func(name, label string, at func(*study.Corner) *study.Vec3) {
		path := string(side) + "." + name
		if d.Suspension.Common != nil {
			path = map[string]string{"spring.body": "springs.%s.body", "spring.moving": "springs.%s.axle"}[name]
			path = fmt.Sprintf(path, side)
		}
		rows = append(rows, PointRow{
			PlacedPoint: study.PlacedPoint{Name: name, Side: side, Place: *at(cornerOf(d, side))},
			Label:       label, Path: path, Direction: name == "armFace.normal",
			at: func(d *study.Document) *study.Vec3 { return at(cornerOf(d, side)) },
		})
	}
	c := cornerOf(d, side)
	if c.Spring != nil {
		add("spring.body", "spring, on the body", func(c *study.Corner) *study.Vec3 { return &c.Spring.Body })
		add("spring.moving", "spring, on the "+carrier(c.Spring), func(c *study.Corner) *study.Vec3 { return &c.Spring.Moving })
	}
	if c.Damper != nil {
		add("damper.body", "damper, on the body", func(c *study.Corner) *study.Vec3 { return &c.Damper.Body })
		add("damper.moving", "damper, on the "+carrier(c.Damper), func(c *study.Corner) *study.Vec3 { return &c.Damper.Moving })
	}
	if c.ArmFace == nil {
		return rows
	}
	add("armFace.point", "arm face", func(c *study.Corner) *study.Vec3 { return &c.ArmFace.Point })
	add("armFace.normal", "arm face, square to it", func(c *study.Corner) *study.Vec3 { return &c.ArmFace.Normal })
	for i := range c.ArmFace.Bolts {
		add(fmt.Sprintf("armFace.bolts.%d", i), fmt.Sprintf("arm face, bolt %d", i+1), func(c *study.Corner) *study.Vec3 { return &c.ArmFace.Bolts[i] })
	}
	return rows
}

// cornerOf returns the side of a document that holds what is stated of it.
func cornerOf(d *study.Document, side study.Side) *study.Corner {
	if side == study.Right && d.Suspension.Right != nil {
		return d.Suspension.Right
	}
	return &d.Suspension.Left
}

// carrier names the part that carries a moving mount.
func carrier(m *study.Damper) string { return cmp.Or(study.Words(m.On), "axle") }

// Mount is something that a study may state by places: with all of them, or not at all.
type Mount struct {
	Key, Label string // Key is its own in the file, such as "armFace"
	About      string
	Stated     bool
	On         string // the part that carries its moving end, "" where nothing is to be chosen
	Bolts      int
}

// Mounts lists what the study's car may have of them.
func Mounts(d *study.Document) []Mount {
	c := &d.Suspension.Left
	spring := Mount{Key: "spring", Label: "Spring", Stated: c.Spring != nil,
		About: "The seats of the spring that holds the loaded wheel. Loads need it; without one the damper's line serves, and a strut's own axis a strut."}
	if c.Spring != nil {
		spring.On = c.Spring.On
	}
	if d.Suspension.Common != nil {
		return []Mount{spring}
	}
	damper := Mount{Key: "damper", Label: "Damper", Stated: c.Damper != nil, About: "The mounts of the damper, for travel that is read as its length."}
	if c.Damper != nil {
		damper.On = c.Damper.On
	}
	face := Mount{Key: "armFace", Label: "Arm face", Stated: c.ArmFace != nil,
		About: "The face of the knuckle that the steering arm is bolted to: a place on it, the direction square to it, and the centres of its bolts. The drawing of the arm and the loads on its bolts need it."}
	if c.ArmFace != nil {
		face.Bolts = len(c.ArmFace.Bolts)
	}
	return []Mount{face, spring, damper}
}

// editMounts changes the mounts of the sides that the study states. Places that are new are
// nobody's own.
func (s *Session) editMounts(label string, change func(d *study.Document, side study.Side, c *study.Corner)) error {
	return s.edit(label, "", func(d *study.Document) {
		change(d, study.Left, &d.Suspension.Left)
		if d.Suspension.Right != nil {
			change(d, study.Right, d.Suspension.Right)
		}
	}, s.from(study.FromTemplate))
}

// SetMount states a mount, at places beside the hardpoints to begin with, or takes it out.
func (s *Session) SetMount(key string, stated bool) error {
	return s.editMounts(study.Words(key), func(d *study.Document, side study.Side, c *study.Corner) {
		off := d.Units.FromMillimetres(boltsApart)
		var line *study.Damper
		var face *study.ArmFace
		if stated {
			end := near(d, side, "lowerBallJoint")
			line = &study.Damper{Body: above(end, d.Units.FromMillimetres(springLength)), Moving: end, On: "lower-arm"}
			if d.Suspension.Common != nil {
				line.On = ""
			}
			on := near(d, side, "tieRodOuter")
			face = &study.ArmFace{Point: on, Normal: study.Vec3{0, -1, 0}, Bolts: []study.Vec3{above(on, off/2), above(on, -off/2)}}
			if side == study.Right {
				face.Normal[1] = 1
			}
		}
		switch key {
		case "armFace":
			c.ArmFace = face
		case "spring":
			c.Spring = line
		case "damper":
			c.Damper = line
		}
	})
}

// Usual sizes, mm, that a mount begins with: common practice.
const (
	boltsApart   = 40
	springLength = 250
)

// near returns the place of a hardpoint of a side, or where the car has none of the name of
// the last of that side.
func near(d *study.Document, side study.Side, name string) (place study.Vec3) {
	for _, p := range d.Points() {
		if p.Side == side {
			place = p.Place
		}
		if p.Side == side && p.Name == name {
			break
		}
	}
	return place
}

// above returns a place over another one.
func above(v study.Vec3, by float64) study.Vec3 {
	v[2] += by
	return v
}

// SetCarrier says which part carries the moving end of a spring or a damper.
func (s *Session) SetCarrier(key, on string) error {
	return s.editMounts(key+" on another part", func(_ *study.Document, _ study.Side, c *study.Corner) {
		if m := map[string]*study.Damper{"spring": c.Spring, "damper": c.Damper}[key]; m != nil {
			m.On = on
		}
	})
}

// SetBolts gives the arm's face another bolt, beside the last, or takes the last out.
func (s *Session) SetBolts(more bool) error {
	return s.editMounts("bolts of the arm face", func(d *study.Document, _ study.Side, c *study.Corner) {
		f := c.ArmFace
		switch {
		case f == nil:
		case more:
			last := f.Point
			if n := len(f.Bolts); n > 0 {
				last = f.Bolts[n-1]
			}
			f.Bolts = append(f.Bolts, above(last, -d.Units.FromMillimetres(boltsApart)))
		case len(f.Bolts) > 0:
			f.Bolts = f.Bolts[:len(f.Bolts)-1]
		}
	})
}
