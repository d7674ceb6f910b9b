package model

import (
	"slices"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// templateSD is how far each coordinate of a car is off a template of its layout, mm:
// common practice.
const templateSD = 15

// editTape changes what was measured by tape.
func (s *Session) editTape(label string, change func(*study.Measured)) error {
	return s.Edit(label, "", func(d *study.Document) {
		if d.Measured == nil {
			d.Measured = &study.Measured{}
		}
		change(d.Measured)
	})
}

// SetMarks puts six marks beside the left wheel, and as many beside the right one of a car
// whose right side has points of its own.
func (s *Session) SetMarks() error {
	return s.Edit("six marks", "", (*study.Document).SetSixMarks)
}

// SetMark puts one coordinate of a mark in its place, mm.
func (s *Session) SetMark(name string, axis int, mm float64) error {
	return s.editTape("mark "+name, func(m *study.Measured) {
		at := m.Marks[name]
		at[axis] = s.doc.Units.FromMillimetres(mm)
		m.Marks[name] = at
	})
}

// SetMarkSD says how well marks stand where they were put, mm.
func (s *Session) SetMarkSD(mm float64) error {
	return s.editTape("marks", func(m *study.Measured) { m.MarkSD = s.doc.Units.FromMillimetres(mm) })
}

// TakeMeasure enters what was measured, mm.
func (s *Session) TakeMeasure(of *engine.NextTape, mm float64) error {
	return s.editTape("measure "+TapeQuestion(s.doc, of), func(m *study.Measured) { addMeasure(m, of, s.doc.Units.FromMillimetres(mm)) })
}

// SkipMeasure says that a measure cannot be taken.
func (s *Session) SkipMeasure(of *engine.NextTape) error {
	return s.editTape("cannot reach", func(m *study.Measured) { m.Unreachable = append(m.Unreachable, of.Key) })
}

// WithMeasure returns a document in which a measure was taken, mm.
func WithMeasure(d *study.Document, of *engine.NextTape, mm float64) *study.Document {
	with, m := *d, study.Measured{}
	if d.Measured != nil {
		m = *d.Measured
	}
	m.Lengths, m.Heights, m.Sides, m.Stations = slices.Clone(m.Lengths), slices.Clone(m.Heights), slices.Clone(m.Sides), slices.Clone(m.Stations)
	addMeasure(&m, of, d.Units.FromMillimetres(mm))
	with.Measured = &m
	return &with
}

// addMeasure adds a measure in file units.
func addMeasure(m *study.Measured, of *engine.NextTape, value float64) {
	if of.Kind == "length" {
		m.Lengths = append(m.Lengths, study.Length{From: of.From, To: of.Of, Value: value})
		return
	}
	list := m.PlumbedOf(of.Kind + "s")
	*list = append(*list, study.Plumbed{Of: of.Of, Value: value})
}

// TapeName is what a mark or a hardpoint that a measure names is called.
func TapeName(d *study.Document, name string) string {
	p, ok := d.TapedPoint(name)
	switch {
	case !ok:
		return "mark " + name
	case d.Suspension.Right == nil && p.Side == study.Left:
		return strings.ToLower(d.PointLabels()[p.Name])
	}
	return d.PointName(p)
}

// TapeQuestion says what is to be measured.
func TapeQuestion(d *study.Document, of *engine.NextTape) string {
	name := TapeName(d, of.Of)
	switch of.Kind {
	case "height":
		return "height of " + name + " over the ground"
	case "side":
		return name + " from the centreline, left positive"
	case "station":
		return name + " along the centreline, forward of the axle positive"
	}
	return TapeName(d, of.From) + " to " + name
}

// TapeRow is a measure as a table has it.
type TapeRow struct {
	study.Measure
	Of                   string
	Taped, SD, Says, Off string
	Wrong                string // what is said of one that does not agree; "" of the others
}

// TapeRows lists the measures beside what the points located say; r may be nil, or of another
// document.
func TapeRows(d *study.Document, r *engine.LocateResult) []TapeRow {
	n, all := NumbersOf(d), d.Measures()
	rows := make([]TapeRow, len(all))
	mm := d.Units.Millimetres
	for i, m := range all {
		row := &rows[i]
		row.Measure, row.Taped, row.SD = m, n.LengthNumber(mm(m.Value)), n.LengthNumber(mm(m.SD))
		row.Of = TapeQuestion(d, &engine.NextTape{Kind: m.Kind(), From: m.From, Of: m.To})
		if r == nil || len(r.Expected) < len(all) {
			continue
		}
		row.Says, row.Off = n.LengthNumber(mm(r.Expected[i])), n.LengthNumber(mm(m.Value-r.Expected[i]))
		for k := range r.Outliers {
			o := &r.Outliers[k]
			if "measured."+o.Measure == m.Path() {
				row.Wrong = strings.TrimSpace("left out, measure it again " + o.Likely)
			}
			for _, or := range o.Or {
				if "measured."+or.Measure == m.Path() {
					row.Wrong = "or this one is wrong"
				}
			}
		}
	}
	return rows
}

// SetMeasure corrects a measure, mm.
func (s *Session) SetMeasure(of study.Measure, mm float64) error {
	return s.editTape("correct a measure", func(m *study.Measured) {
		value := s.doc.Units.FromMillimetres(mm)
		if of.Axis() < 0 {
			m.Lengths[of.Index].Value = value
			return
		}
		(*m.PlumbedOf(of.List))[of.Index].Value = value
	})
}

// DropMeasure takes a measure out.
func (s *Session) DropMeasure(of study.Measure) error {
	return s.editTape("take a measure out", func(m *study.Measured) {
		if of.Axis() < 0 {
			m.Lengths = slices.Delete(m.Lengths, of.Index, of.Index+1)
			return
		}
		list := m.PlumbedOf(of.List)
		*list = slices.Delete(*list, of.Index, of.Index+1)
	})
}

// TwoLengths are the tie rod and the steering arm, ball to ball: taped alone on a template they
// already bend its curve towards the car's.
func TwoLengths(d *study.Document, design *solver.Design) (list []engine.NextTape) {
	name := func(role solver.Role) string {
		for _, h := range design.Kind.SidePoints {
			if h.Role == role {
				return "left." + h.Name
			}
		}
		return ""
	}
	outer := name(solver.TieRodOuterRole)
	for _, from := range []string{name(solver.TieRodInnerRole), name(solver.LowerBallRole)} {
		if from != "" && outer != "" {
			list = append(list, engine.NextTape{Kind: "length", From: from, Of: outer})
		}
	}
	return list
}

// TakeOne enters one of the two lengths, mm, in place of what it was before. Without marks the
// file's car is a template that is known to be near.
func (s *Session) TakeOne(of *engine.NextTape, mm float64) error {
	return s.editTape("measure "+TapeQuestion(s.doc, of), func(m *study.Measured) {
		if len(m.Marks) == 0 && m.TemplateSD == 0 {
			m.TemplateSD = s.doc.Units.FromMillimetres(templateSD)
		}
		m.Lengths = slices.DeleteFunc(m.Lengths, func(l study.Length) bool { return l.From == of.From && l.To == of.Of })
		addMeasure(m, of, s.doc.Units.FromMillimetres(mm))
	})
}

// Taped returns what one of the two lengths was entered as; "" for nothing.
func Taped(d *study.Document, of *engine.NextTape) string {
	for _, m := range d.Measures() {
		if m.From == of.From && m.To == of.Of {
			return NumbersOf(d).LengthNumber(d.Units.Millimetres(m.Value))
		}
	}
	return ""
}

// TakeLocation puts the points where the tape has them, as one edit.
func (s *Session) TakeLocation(r *engine.LocateResult) error {
	next, err := engine.ApplyLocation(s.doc, r)
	if err != nil {
		return err
	}
	s.Replace("points by tape", next)
	return nil
}

// ShowTape shows the toe change of the car located, with its 90 % band.
func (d *Desk) ShowTape(r *engine.LocateResult) {
	doc := d.Session.Document()
	d.View.Bands = nil
	for _, side := range solver.Sides {
		toe := r.Toe[side.String()]
		if doc.Suspension.Right == nil {
			toe = r.Toe["left"]
		}
		b := Band{Side: side}
		for _, p := range toe.Curve {
			at, half := solver.Deg(float64(p.Value)).Radians(), band90*solver.Deg(float64(p.SD)).Radians()
			b.Travel, b.Low, b.High = append(b.Travel, doc.Units.Millimetres(p.Travel)), append(b.Low, at-half), append(b.High, at+half)
		}
		if len(b.Travel) > 0 {
			d.View.Bands = append(d.View.Bands, b)
		}
	}
}

// TapeStatus says how well the toe is known, and whether that is enough to choose a spacer.
func TapeStatus(d *study.Document, r *engine.LocateResult) string {
	n := NumbersOf(d)
	toe := func(deg float64) string { return n.ToeText(solver.Deg(deg)) }
	worst := 0.0
	for _, t := range r.Toe {
		if t.Problem != "" {
			return "No toe yet: " + t.Problem
		}
		worst = max(worst, float64(t.Bump.SD), float64(t.Droop.SD))
	}
	text := "Toe at the ends of the travel is known to ±" + toe(band90*worst) + " (90 %)."
	if s := r.Spacer; s != nil {
		text += " A spacer of " + n.Spacer(d.Units.Millimetres(s.Step)) + " moves it by " + toe(float64(s.Toe)) + ": "
		if s.Narrow {
			return text + "narrow enough to choose one."
		}
		text += "measure on."
	}
	return text
}
