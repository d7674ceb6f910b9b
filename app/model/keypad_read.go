package model

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// ReadingRow is a row of readings as it was typed, in file units. A side that was left empty was
// not read.
type ReadingRow struct {
	Travel      float64
	Left, Right *float64
}

// row reads all fields.
func (k *Keypad) row(s *Session, run Run) (*ReadingRow, error) {
	var read [StackField]*float64
	for f := range StackField {
		x, err := k.read(s, run, f)
		if err != nil {
			k.At = f
			return nil, err
		}
		read[f] = x
	}
	if read[LeftField] == nil && read[RightField] == nil {
		k.At = LeftField
		return nil, fmt.Errorf("type the reading of at least one side")
	}
	return &ReadingRow{*read[TravelField], read[LeftField], read[RightField]}, nil
}

// read reads a field of the row, in file units. An empty one is nil; the travel must not be. A
// travel that is shown as one that was read is that one, and so is a reading that was opened
// and not changed.
func (k *Keypad) read(s *Session, run Run, f ReadingField) (*float64, error) {
	n, units := NumbersOf(s.doc), s.doc.Units
	switch {
	case f == TravelField && !k.Typed && k.proposed != nil:
		return &k.proposed.Travel, nil
	case f == TravelField && strings.TrimSpace(k.Texts[f]) == "":
		return nil, fmt.Errorf("type the travel at which the gauge was read")
	case strings.TrimSpace(k.Texts[f]) == "":
		return nil, nil
	case f != TravelField:
		return k.reading(s, run, f)
	}
	mm, err := n.ParseLength(k.Texts[f])
	if err != nil {
		return nil, err
	}
	x := exact(units.FromMillimetres(mm))
	for _, row := range run.Rows(s.doc) {
		if shownAlike(s.doc, row.Travel, x) {
			x = row.Travel
		}
	}
	return &x, s.plausibleTravel(run, x)
}

// reading reads what the gauge read on a side.
func (k *Keypad) reading(s *Session, run Run, f ReadingField) (*float64, error) {
	if was := k.opened(s.doc, run, f); was != nil && k.Texts[f] == k.ReadingText(s.doc, was) {
		return was, nil
	}
	x, err := k.parseReading(s.doc, k.Texts[f])
	if err != nil {
		return nil, err
	}
	return &x, run.plausibleReading(s.doc, x)
}

// opened returns the reading of a side as it was when its row was opened, nil for none.
func (k *Keypad) opened(d *study.Document, run Run, f ReadingField) *float64 {
	if k.Opened == nil {
		return nil
	}
	rows := run.Rows(d)
	i := slices.IndexFunc(rows, func(row RunRow) bool { return row.Travel == *k.Opened })
	if i < 0 {
		return nil
	}
	return rows[i].Values[f-LeftField]
}

// mostDecimals are those of a reading in thousandths or hundredths.
const mostDecimals = 5

// fineUnit is what readings are in where they are fine: a thousandth of an inch or a
// hundredth of a mm, as the marks of a dial.
func fineUnit(u study.Units) float64 {
	if u == study.Inch {
		return 0.001
	}
	return 0.01
}

// parseReading reads a text in the unit that readings are typed in, unless it says another.
func (k *Keypad) parseReading(d *study.Document, text string) (float64, error) {
	n := NumbersOf(d)
	if x, ok := number.ParsePlain(text); k.Fine && ok {
		return exact(d.Units.FromMillimetres(n.Units.Millimetres(x * fineUnit(n.Units)))), nil
	}
	mm, err := n.ParseLength(text)
	return exact(d.Units.FromMillimetres(mm)), err
}

// ReadingText writes a reading, or what is left of one, as they are typed; "" where there is
// none.
func (k *Keypad) ReadingText(d *study.Document, x *float64) string {
	n := NumbersOf(d)
	switch {
	case x == nil:
		return ""
	case k.Fine:
		return number.Trimmed(n.Units.FromMillimetres(d.Units.Millimetres(*x))/fineUnit(n.Units), 1)
	}
	return n.LengthDecimal(d.Units.Millimetres(*x))
}

// ReadingUnit is the unit of readings as they are typed.
func (k *Keypad) ReadingUnit(d *study.Document) string {
	n := NumbersOf(d)
	if k.Fine {
		return FineName(n.Units)
	}
	return n.LengthUnit()
}

// FineName is what the fine unit is called: "0.001 in".
func FineName(u study.Units) string {
	return number.Trimmed(fineUnit(u), 3) + " " + string(number.Style{Units: u}.LengthUnit())
}

// Goes says where Next goes: "left", or the travel of the next row, "+10"; "enter it" where none follows.
func (k *Keypad) Goes(s *Session) string {
	switch {
	case k.Asked:
		return "replaces it"
	case k.At == StackField && k.proposed != nil && k.proposed.Own:
		return "left"
	case k.At == StackField:
		return "travel"
	case k.At == TravelField:
		return "left"
	case k.At == LeftField:
		return "right"
	case k.Opened != nil:
		return "change it"
	}
	if p, ok := k.Following(s); ok {
		return SignedTravel(s.doc, p.Travel)
	}
	return "enter it"
}

// SignedTravel writes a travel of file units with its sign, without its unit.
func SignedTravel(d *study.Document, x float64) string {
	return number.Signed(x, NumbersOf(d).TravelNumber(d.Units.Millimetres(x)))
}

// Following returns the travel of the row after the one that is typed.
func (k *Keypad) Following(s *Session) (Proposal, bool) {
	runs := Runs(s.doc)
	if k.Run >= len(runs) || k.Opened != nil {
		return Proposal{}, false
	}
	run := runs[k.Run]
	x, ok := k.Travel(s, run)
	if !ok {
		return Proposal{}, false
	}
	return s.NextTravel(run, append(run.Rows(s.doc), RunRow{Travel: x}), &x, k.Follow)
}

// Travel returns the travel of the row that is typed, in file units; ok is false where it
// cannot be told.
func (k *Keypad) Travel(s *Session, run Run) (x float64, ok bool) {
	travel, err := k.read(s, run, TravelField)
	if err != nil {
		return 0, false
	}
	return *travel, true
}

// Done reports whether nothing is left to be read in the run, nor half typed.
func (k *Keypad) Done() bool { return k.proposed == nil && !k.Typed && k.Opened == nil }

// exact takes off a number what two changes of its unit left, and the sign off 0: no gauge
// reads a billionth.
func exact(x float64) float64 { return math.Round(x*1e9)/1e9 + 0 }

// replaces asks whether a row may replace what was read at its travel; "" where there is
// nothing to replace, as where that row was opened to be changed.
func (k *Keypad) replaces(s *Session, r Run, row *ReadingRow) string {
	if k.Opened != nil && *k.Opened == row.Travel {
		return ""
	}
	d := s.doc
	rows, n, mm := r.Rows(d), NumbersOf(d), d.Units.Millimetres
	i := slices.IndexFunc(rows, func(was RunRow) bool { return was.Travel == row.Travel })
	if i < 0 {
		return ""
	}
	var were []string
	for side, x := range []*float64{row.Left, row.Right} {
		if was := rows[i].Values[side]; was != nil && x != nil {
			were = append(were, n.Length(mm(*was))+" "+solver.Side(side).String())
		}
	}
	if len(were) == 0 {
		return ""
	}
	return fmt.Sprintf("At %s %s was read already. Next replaces it; to keep it, type another travel.", n.Travel(mm(row.Travel)), strings.Join(were, " and "))
}
