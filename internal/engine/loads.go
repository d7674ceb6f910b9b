package engine

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"

	"toewright/internal/study"
	"toewright/solver"
)

// LoadsOptions say which cars are looked at.
type LoadsOptions struct {
	Candidate string `json:"candidate,omitzero"` // restricts to one car; "base" is the base car
	// Preset names usual cases by their keys, with commas between, in place of the study's;
	// "list" lists them, and asks for no forces.
	Preset string `json:"preset,omitzero"`
}

// LoadsResult is what [Loads] returns: forces in N, moments in N m and stresses in
// MPa, whatever the units of the file.
type LoadsResult struct {
	Units study.Units `json:"units"`
	Loads []Load      `json:"loads"` // of each car, each case, left then right
	// Sources say of each case that states it where its loads come from.
	Sources []string `json:"sources,omitzero"`
	// Cases are the presets asked for, as the study would state them, and Presets all of
	// them where they were to be listed.
	Cases   []study.LoadCase `json:"cases,omitzero"`
	Presets []LoadPreset     `json:"presets,omitzero"`
}

// Load is what a case makes of one side of a car, with links without weight, joints
// without friction, the gear held, and the spring holding the wheel at its travel.
type Load struct {
	Candidate string `json:"candidate"`
	Case      string `json:"case"`
	Side      string `json:"side"`
	// TieRod is the rod's tension, negative where it is pushed together, and so is
	// DragLink, which a solid axle has; Spring is the spring's compression.
	TieRod   Number    `json:"tieRod"`
	DragLink *Number   `json:"dragLink,omitzero"`
	Spring   Number    `json:"spring"`
	Arm      *ArmLoad  `json:"arm,omitzero"`   // nil where the study states no face
	Bolts    []Sheared `json:"bolts,omitzero"` // none where it states fewer than two
	Stud     *StudLoad `json:"stud,omitzero"`  // nil where it states no stud
	// Compliance is an estimate of the toe that the load makes; nil where the study states
	// no stiffness.
	Compliance *Compliance `json:"compliance,omitzero"`
	// Ratio is the size of TieRod by that of the base car in the same case; nil where
	// that has none.
	Ratio *Number `json:"ratio,omitzero"`
}

// ArmLoad is what the rod does to the steering arm at the point of its face: along the
// face's normal, positive off the face, and in the face; its moment about the normal,
// by the right hand in vehicle axes, and the size of that in the face.
type ArmLoad struct {
	Pull  Number `json:"pull"`
	Shear Number `json:"shear"`
	Twist Number `json:"twist"`
	Bend  Number `json:"bend"`
}

// Sheared is one bolt's share by the elastic method.
type Sheared struct {
	Shear Number `json:"shear"`
}

// Compliance is an estimate, to first order: the change of the wheel's toe under a load as
// its links, bushings and gear give by the stiffness stated, at the travel of the case.
type Compliance struct {
	// Toe is in degrees, toe-in positive; nil where Missing says which stiffness is not
	// stated.
	Toe     *Number  `json:"toe,omitzero"`
	By      []Give   `json:"by,omitzero"` // what each member does of it
	Missing []string `json:"missing,omitzero"`
}

// Give is the change of toe by what one member gives, degrees.
type Give struct {
	Member string `json:"member"`
	Toe    Number `json:"toe"`
}

// StudLoad is the stress of the outer ball's stud where it is clamped.
type StudLoad struct {
	Bending Number `json:"bending"`
}

// maxLoads is the most cases over all cars and sides: some tens of megabytes.
const maxLoads = 100_000

// Loads returns the forces in rod, spring and arm of the base car and of each
// candidate in each of the study's load cases, or in the presets asked for. A loaded wheel whose spring is not
// stated is an error that names it.
func Loads(ctx context.Context, d *study.Document, o LoadsOptions) (*LoadsResult, error) {
	out := &LoadsResult{Units: d.Units, Loads: []Load{}}
	switch o.Preset {
	case "":
	case "list":
		out.Presets = LoadPresets(d)
		return out, nil
	default:
		cases, err := presetCases(d, o.Preset)
		if err != nil {
			return nil, err
		}
		with := *d
		with.Loads, out.Cases = cases, cases
		d = &with
	}
	if err := d.ReadyForLoads(); err != nil {
		return nil, explain(err, "")
	}
	c, err := newCars(d)
	if err != nil {
		return nil, err
	}
	list, err := c.pick(ctx, o.Candidate)
	if err != nil {
		return nil, err
	}
	if n := 2 * len(list) * len(d.Loads); n > maxLoads {
		return nil, wrongf("loads", "make %d figures over all cars, want at most %d; ask for one candidate", n, maxLoads)
	}
	base, err := c.byName(study.BaseName)
	if err != nil {
		return nil, err
	}
	l := loader{cars: c, parts: c.loadParts(), ws: solver.NewWorkspace(), members: c.design.Members(), missing: d.StiffnessLacking()}
	if l.missing == nil {
		l.parts.Stiffness = d.Stiffness
	}
	for i := range d.Loads {
		if c := &d.Loads[i]; c.Source != "" {
			out.Sources = append(out.Sources, c.Name+": "+c.Source+".")
		}
	}
	stock, err := l.forces(ctx, base)
	if err != nil {
		return nil, err
	}
	for _, car := range list {
		found, err := l.forces(ctx, car)
		if err != nil {
			return nil, err
		}
		for i := range d.Loads {
			for _, s := range solver.Sides {
				out.Loads = append(out.Loads, l.load(car.name, &d.Loads[i], s, &found[i][s], stock[i][s].TieRod))
			}
		}
	}
	return out, nil
}

// loader finds the forces in the cars of a study.
type loader struct {
	*cars
	parts *solver.LoadParts
	ws    *solver.Workspace

	members, missing []string // what gives, and of that what has no stiffness stated
}

// forces returns what each load case makes of a car.
func (l *loader) forces(ctx context.Context, car car) ([][2]solver.Forces, error) {
	k, err := car.axle.Statics(l.parts)
	if err != nil {
		return nil, l.explain(err, label(car.name))
	}
	out := make([][2]solver.Forces, len(l.doc.Loads))
	for i := range l.doc.Loads {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		in := l.loadCase(&l.doc.Loads[i])
		if err := k.Forces(l.ws, &in, &out[i]); err != nil {
			return nil, l.explain(err, fmt.Sprintf("%s, case %.60q", label(car.name), l.doc.Loads[i].Name))
		}
	}
	return out, nil
}

// explain is [explain] of what the solver says of springs and faces, which it knows by
// their sides alone.
func (l *loader) explain(err error, car string) error {
	var spring *solver.SpringError
	var input *solver.InputError
	switch {
	case errors.As(err, &spring):
		return &Error{Key: l.doc.SpringPath(study.Side(spring.Side.String())), Message: "is missing: " + study.SpringNeeded}
	case errors.As(err, &input):
		if key, side, sided := strings.Cut(input.Key, "@"); sided {
			return &Error{Key: l.partPath(key, study.Side(side)), Car: car, Message: input.Problem}
		}
	}
	return explain(err, car)
}

// partPath returns where a side's spring or arm face stands in the file.
func (l *loader) partPath(key string, side study.Side) string {
	path := l.doc.SpringPath(side)
	if key != "spring" {
		return strings.TrimSuffix(path, "spring") + key
	}
	if l.doc.Suspension.Corner(side).Spring == nil {
		return strings.TrimSuffix(path, "spring") + "damper"
	}
	return path
}

// loadParts returns what forces are taken on, in mm.
func (c *cars) loadParts() *solver.LoadParts {
	p := &solver.LoadParts{}
	for _, s := range solver.Sides {
		side := study.Side(s.String())
		if m := c.doc.SpringOf(side); m != nil {
			spring := solver.Spring(mounts(c.doc, m))
			p.Springs[s] = &spring
		}
		if f := c.doc.Suspension.Corner(side).ArmFace; f != nil {
			face := &solver.BoltedFace{Point: inMillimetres(c.doc, f.Point), Normal: solverVec(f.Normal)}
			for _, b := range f.Bolts {
				face.Bolts = append(face.Bolts, inMillimetres(c.doc, b))
			}
			p.Faces[s] = face
		}
	}
	if rod := c.doc.TieRod; rod != nil && rod.OuterBall != nil && rod.OuterBall.Stud != nil {
		d := rod.OuterBall.Stud
		p.Stud = &solver.Stud{Diameter: c.doc.Units.Millimetres(d.Diameter), Height: c.doc.Units.Millimetres(d.Height)}
	}
	return p
}

// noForce is the share of a case's loads below which a rod's force is but what rounding
// leaves of none: a ratio to it would say nothing.
const noForce = 1e-10

// newtonMillimetres are in a newton metre.
const newtonMillimetres = 1000.0

// loadCase returns a case as the solver takes it.
func (c *cars) loadCase(k *study.LoadCase) solver.LoadCase {
	var in solver.LoadCase
	in.Heave, in.Steer = c.doc.Units.Millimetres(k.Travel), c.steer(k.Steer)
	for _, s := range solver.Sides {
		if l := k.On(study.Side(s.String())); l != nil {
			w := solver.WheelLoad{Force: solverVec(l.Force), AtCentre: l.At == "wheel-centre"}
			if m := l.Moment; m != nil {
				w.Moment = solver.Vec{X: newtonMillimetres * m[0], Y: newtonMillimetres * m[1], Z: newtonMillimetres * m[2]}
			}
			in.Wheels[s] = w
		}
	}
	return in
}

// load returns the figures of one side; stock is the force in the base car's rod.
func (l *loader) load(name string, k *study.LoadCase, s solver.Side, f *solver.Forces, stock float64) Load {
	out := Load{Candidate: name, Case: k.Name, Side: s.String(), TieRod: Number(f.TieRod), Spring: Number(f.Spring)}
	if l.design.Kind.CommonPoints != nil {
		drag := Number(f.DragLink)
		out.DragLink = &drag
	} else if l.parts.Faces[s] != nil {
		out.Arm = &ArmLoad{
			Pull: Number(f.Arm.Pull), Shear: Number(f.Arm.Shear),
			Twist: Number(f.Arm.Twist / newtonMillimetres), Bend: Number(f.Arm.Bend / newtonMillimetres),
		}
	}
	for _, shear := range f.Bolts {
		out.Bolts = append(out.Bolts, Sheared{Number(shear)})
	}
	if l.parts.Stud != nil {
		out.Stud = &StudLoad{Number(f.StudBending)}
	}
	out.Compliance = l.compliance(f.Give)
	if math.Abs(stock) > noForce*k.Size() {
		ratio := Number(math.Abs(f.TieRod / stock))
		out.Ratio = &ratio
	}
	return out
}

// compliance returns the estimate of what gives, nil where no stiffness is stated.
func (l *loader) compliance(give []float64) *Compliance {
	if len(l.doc.Stiffness) == 0 {
		return nil
	}
	out := &Compliance{Missing: l.missing}
	sum := 0.0
	for i, v := range give {
		sum += v
		out.By = append(out.By, Give{l.members[i], degrees(v)})
	}
	if l.missing == nil {
		out.Toe = new(degrees(sum))
	}
	return out
}
