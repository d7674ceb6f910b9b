package model

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// ReadingField is a field of the form for readings.
type ReadingField int

// The fields in the order in which a thumb goes through them.
const (
	TravelField ReadingField = iota
	LeftField
	RightField
	readingFields
)

// Keypad enters gauge readings with one thumb, row by row. Its states are the field that is
// typed and one question:
//
//	         Next           Next            Next: the row is entered
//	travel ───────▶ left ───────▶ right ──────────────────────────▶ left of the next row
//	                                │                      (travel where none is proposed)
//	                                │ Next, where that travel was read already
//	                                ▼
//	                              asked ──Next──▶ the row replaces the one that was read
//
// A touch on a field goes there. Any key but Next takes the question back. A text that
// cannot be read stays where it is, its field becomes the one that is typed, and Fault says
// what is wrong. The travel of a new row is proposed: it follows the study until the first
// key on it, from which on it is the reader's and only keys change it.
//
// The zero Keypad is ready to use. [Keypad.Settle] has to follow any change of the study.
type Keypad struct {
	Run   int                   `json:"run,omitzero"` // place of the run that is typed
	At    ReadingField          `json:"at,omitzero"`
	Texts [readingFields]string `json:"texts,omitzero"`
	Typed bool                  `json:"typed,omitzero"` // the travel is the reader's own, not a proposal
	Units study.Units           `json:"units,omitzero"` // what the texts are in where they do not say it
	// Last is the travel in file units that was entered last in the run; nil for none.
	Last  *float64 `json:"last,omitzero"`
	Asked bool     `json:"-"` // Next replaces a row
	Fault string   `json:"-"` // what is wrong, or asked

	proposed *float64 // travel in file units; nil where none is left
}

// ReadingRow is a row of readings as it was typed, in file units. A side that was left empty was
// not read.
type ReadingRow struct {
	Travel      float64
	Left, Right *float64
}

// The keys that are no digits.
const (
	SignKey   = "±"
	BackKey   = "⌫"
	PointKey  = "."
	FractKey  = "/"
	SpaceKey  = "␣"
	mostTyped = 12 // letters of a field
)

// ParseKeypad returns the keypad that [Keypad.Draft] wrote, the zero one where the text is
// nothing that it writes.
func ParseKeypad(draft string) Keypad {
	var k Keypad
	if json.Unmarshal([]byte(draft), &k) != nil || k.Run < 0 || k.At < 0 || k.At >= readingFields {
		return Keypad{}
	}
	return k
}

// Draft writes what is being typed, to be kept; "" where that is nothing.
func (k *Keypad) Draft() string {
	left := *k
	if !left.Typed {
		left.Texts[TravelField] = ""
	}
	if left.Run == 0 && left.At == TravelField && left.Last == nil && left.Texts == ([readingFields]string{}) && !left.Typed {
		return ""
	}
	b, err := json.Marshal(&left)
	if err != nil {
		return "" // texts, numbers and places can always be written
	}
	return string(b)
}

// Settle brings the keypad up to date with the study: the run that is typed is one of its
// runs, a proposed travel is the next that was not read, and texts keep the unit that they
// were typed in.
func (k *Keypad) Settle(s *Session) {
	runs, n := Runs(s.doc), NumbersOf(s.doc)
	k.Run = min(k.Run, max(len(runs)-1, 0))
	k.proposed = nil
	if len(runs) == 0 {
		return
	}
	k.keepUnits(n.Units)
	if k.Typed {
		return
	}
	k.Texts[TravelField] = ""
	if travel, ok := runs[k.Run].NextTravel(s.doc, k.Last); ok {
		k.proposed, k.Texts[TravelField] = &travel, n.TravelNumber(s.doc.Units.Millimetres(travel))
	}
}

// keepUnits has the texts say their unit once another is shown.
func (k *Keypad) keepUnits(shown study.Units) {
	if k.Units != "" && k.Units != shown {
		for f := range k.Texts {
			if _, err := number.ParseLength(k.Texts[f], k.Units); err == nil && !strings.ContainsAny(k.Texts[f], `mi"`) {
				k.Texts[f] += " " + string(k.Units)
			}
		}
	}
	k.Units = shown
}

// Choose goes to another run. The row that is being typed stays, but for its proposal.
func (k *Keypad) Choose(s *Session, run int) {
	k.Run, k.Last = run, nil
	k.answer()
	k.Settle(s)
}

// Go goes to a field.
func (k *Keypad) Go(f ReadingField) {
	k.At = f
	k.answer()
}

// answer takes the question back.
func (k *Keypad) answer() { k.Asked, k.Fault = false, "" }

// Type replaces the text of a field, as a keyboard does.
func (k *Keypad) Type(f ReadingField, text string) {
	k.Go(f)
	k.Texts[f] = text
	k.Typed = k.Typed || f == TravelField
}

// Press takes in a key but Next. On a proposed travel it begins a new one, unless it takes the
// last letter off.
func (k *Keypad) Press(key string) {
	text := k.Texts[k.At]
	if k.At == TravelField && !k.Typed && key != BackKey {
		text = ""
	}
	k.Type(k.At, pressed(text, key))
}

// pressed returns a text with a key taken in.
func pressed(text, key string) string {
	runes := []rune(text)
	switch {
	case key == BackKey:
		return string(runes[:max(len(runes)-1, 0)])
	case key == SignKey && len(runes) > 0 && runes[0] == '−':
		return string(runes[1:])
	case key == SignKey:
		return "−" + text
	case len(runes) >= mostTyped:
		return text
	case key == SpaceKey:
		return text + " "
	}
	return text + key
}

// Next goes to the next field. Behind the last one it enters the row, which is then true,
// and begins the one that follows; it asks first where the row would replace another.
func (k *Keypad) Next(s *Session) (entered bool) {
	asked := k.Asked
	k.answer()
	run := Runs(s.doc)[k.Run]
	if _, err := k.read(s, run, k.At); err != nil {
		k.Fault = err.Error()
		return false
	}
	if k.At < RightField {
		k.At++
		return false
	}
	row, err := k.row(s, run)
	if err == nil && !asked {
		k.Fault = run.replaces(s.doc, row)
		k.Asked = k.Fault != ""
	}
	if err == nil && !k.Asked {
		err = s.AddReading(run, row)
	}
	if err != nil {
		k.Fault = err.Error()
	}
	if k.Fault != "" {
		return false
	}
	k.begin(s, row)
	return true
}

// begin begins the row after another.
func (k *Keypad) begin(s *Session, row *ReadingRow) {
	*k = Keypad{Run: k.Run, Last: &row.Travel}
	if k.Settle(s); k.proposed != nil {
		k.At = LeftField
	}
}

// row reads all fields.
func (k *Keypad) row(s *Session, run Run) (*ReadingRow, error) {
	var read [readingFields]*float64
	for f := range readingFields {
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

// read reads a field, in file units. An empty one is nil; the travel must not be. A travel
// that is shown as one that was read is that one.
func (k *Keypad) read(s *Session, run Run, f ReadingField) (*float64, error) {
	n, units := NumbersOf(s.doc), s.doc.Units
	switch {
	case f == TravelField && !k.Typed && k.proposed != nil:
		return k.proposed, nil
	case f == TravelField && strings.TrimSpace(k.Texts[f]) == "":
		return nil, fmt.Errorf("type the travel at which the gauge was read")
	case strings.TrimSpace(k.Texts[f]) == "":
		return nil, nil
	}
	mm, err := n.ParseLength(k.Texts[f])
	if err != nil {
		return nil, err
	}
	x := exact(units.FromMillimetres(mm))
	if f != TravelField {
		return &x, run.plausibleReading(s.doc, x)
	}
	for _, row := range run.Rows(s.doc) {
		if n.LengthNumber(units.Millimetres(row.Travel)) == n.LengthNumber(mm) {
			x = row.Travel
		}
	}
	return &x, s.plausibleTravel(run, x)
}

// exact takes off a number what two changes of its unit left, and the sign off 0: no gauge
// reads a billionth.
func exact(x float64) float64 { return math.Round(x*1e9)/1e9 + 0 }

// replaces asks whether a row may replace what was read at its travel; "" where there is
// nothing to replace.
func (r Run) replaces(d *study.Document, row *ReadingRow) string {
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
