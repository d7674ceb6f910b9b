package model

import (
	"encoding/json"
	"slices"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
)

// ReadingField is a field of the form for readings.
type ReadingField int

// The fields: those of a row in the order in which a thumb goes through them, and the stack
// of the whole run.
const (
	TravelField ReadingField = iota
	LeftField
	RightField
	StackField
	readingFields
)

// Keypad enters gauge readings with one thumb, row by row. Its states are the field that is
// typed and one question:
//
//	        Next           Next           Next            Next: the row is entered
//	stack ───────▶ travel ───────▶ left ───────▶ right ──────────────────────────▶ left of the next row
//	                                               │                      (travel where the spacing is not known)
//	                                               │ Next, where that travel was read already
//	                                               ▼
//	                                             asked ──Next──▶ the row replaces the one that was read
//
// Stack leads to left at once where the run before says which travels come. A touch on a
// field goes there, and the first key on it replaces what stands there, unless it takes the
// last letter off. Any key but Next takes the question back. A text that cannot be read stays
// where it is, its field becomes the one that is typed, and Fault says what is wrong. The
// travel of a new row is proposed: it follows the reader's own spacing until the first key on
// it, from which on it is the reader's and only keys change it. A row that was entered can be
// opened again: it is changed by Next behind its last field, and what was half typed before
// comes back.
//
// The zero Keypad is ready to use. [Keypad.Settle] has to follow any change of the study.
type Keypad struct {
	Run   int                   `json:"run,omitzero"` // place of the run that is typed
	At    ReadingField          `json:"at,omitzero"`
	Texts [readingFields]string `json:"texts,omitzero"`
	Fresh bool                  `json:"fresh,omitzero"` // the next key replaces the text
	Typed bool                  `json:"typed,omitzero"` // the travel is the reader's own, not a proposal
	// Stacked says that the stack is typed, and not yet the run's.
	Stacked bool        `json:"stacked,omitzero"`
	Units   study.Units `json:"units,omitzero"` // what the texts are in where they do not say it
	// Last is the travel in file units that was entered last in the run; nil for none. Order
	// has all that were entered, Follow those of the run before.
	Last   *float64  `json:"last,omitzero"`
	Order  []float64 `json:"order,omitzero"`
	Follow []float64 `json:"follow,omitzero"`
	// Opened is the travel in file units of the row that is being changed; nil for a new
	// row. Aside is the row that was half typed then.
	Opened *float64 `json:"opened,omitzero"`
	Aside  *Aside   `json:"aside,omitzero"`
	Fine   bool     `json:"-"` // readings are typed and shown in thousandths of an inch or hundredths of a mm
	Asked  bool     `json:"-"` // Next replaces a row
	Fault  string   `json:"-"` // what is wrong, or asked

	proposed *Proposal // nil where none is left
}

// Aside is a row that was half typed when another one was opened.
type Aside struct {
	At    ReadingField          `json:"at,omitzero"`
	Texts [readingFields]string `json:"texts,omitzero"`
	Typed bool                  `json:"typed,omitzero"`
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
	if !left.Stacked {
		left.Texts[StackField] = ""
	}
	if left.Run == 0 && left.At == TravelField && left.Last == nil && left.Texts == ([readingFields]string{}) && !left.Typed && left.Follow == nil {
		return ""
	}
	b, err := json.Marshal(&left)
	if err != nil {
		return "" // texts, numbers and places can always be written
	}
	return string(b)
}

// Settle brings the keypad up to date with the study: the run that is typed is one of its
// runs, a proposed travel is the next that was not read, the stack is the run's, and texts
// keep the unit that they were typed in.
func (k *Keypad) Settle(s *Session) {
	runs, n := Runs(s.doc), NumbersOf(s.doc)
	k.Run = min(k.Run, max(len(runs)-1, 0))
	k.proposed = nil
	if len(runs) == 0 {
		return
	}
	k.keepUnits(n.Units)
	if !k.Stacked {
		k.Texts[StackField] = s.stackText(runs[k.Run])
	}
	if k.Typed {
		return
	}
	k.Texts[TravelField] = ""
	if p, ok := s.NextTravel(runs[k.Run], runs[k.Run].Rows(s.doc), k.Last, k.Follow); ok {
		k.proposed, k.Texts[TravelField] = &p, n.TravelNumber(s.doc.Units.Millimetres(p.Travel))
	}
}

// stackText is what stands in the field of the stack: "" where the run has none.
func (s *Session) stackText(r Run) string {
	st, ok := s.StackOf(r)
	if !ok {
		return ""
	}
	return NumbersOf(s.doc).LengthDecimal(s.doc.Units.Millimetres(st.Value))
}

// keepUnits has the texts say their unit once another is shown.
func (k *Keypad) keepUnits(shown study.Units) {
	if k.Units != "" && k.Units != shown {
		k.say()
	}
	k.Units = shown
}

// say has the texts say their unit.
func (k *Keypad) say() {
	u := k.Units
	for f := range k.Texts {
		x, err := number.ParseLength(k.Texts[f], u)
		switch {
		case err != nil || strings.ContainsAny(k.Texts[f], `mi"`):
		case k.Fine && (f == int(LeftField) || f == int(RightField)):
			k.Texts[f] = number.Trimmed(x*fineUnit(u), mostDecimals) + " " + string(u)
		default:
			k.Texts[f] += " " + string(u)
		}
	}
}

// SetFine has readings typed and shown in thousandths of an inch or hundredths of a mm, or
// no longer. What is typed keeps its meaning.
func (k *Keypad) SetFine(fine bool) {
	if fine != k.Fine && k.Units != "" {
		k.say()
	}
	k.Fine = fine
}

// Choose goes to another run. The row that is being typed stays, but for its proposal.
func (k *Keypad) Choose(s *Session, run int) {
	k.close()
	if run != k.Run && len(k.Order) > 1 {
		k.Follow = k.Order
	}
	k.Run, k.Last, k.Order, k.Stacked = run, nil, nil, false
	k.answer()
	k.Settle(s)
}

// Begin begins a run, at its stack.
func (k *Keypad) Begin(s *Session) error {
	run, err := s.AddRun()
	if err != nil {
		return err
	}
	k.Choose(s, run)
	k.Go(StackField)
	if _, ok := s.StackOf(Runs(s.doc)[run]); !ok {
		k.toRow()
	}
	return nil
}

// Go goes to a field.
func (k *Keypad) Go(f ReadingField) {
	k.At, k.Fresh = f, true
	k.answer()
}

// toRow goes to the first field of a row that is to be typed.
func (k *Keypad) toRow() {
	if k.Go(TravelField); k.proposed != nil && k.proposed.Own {
		k.Go(LeftField)
	}
}

// answer takes the question back.
func (k *Keypad) answer() { k.Asked, k.Fault = false, "" }

// Type replaces the text of a field, as a keyboard does.
func (k *Keypad) Type(f ReadingField, text string) {
	k.Go(f)
	k.Texts[f], k.Fresh = text, false
	k.Typed = k.Typed || f == TravelField
	k.Stacked = k.Stacked || f == StackField
}

// Press takes in a key but Next.
func (k *Keypad) Press(key string) {
	text := k.Texts[k.At]
	fresh := k.Fresh || k.At == TravelField && !k.Typed || k.At == StackField && !k.Stacked
	if fresh && key != BackKey {
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
// and begins the one that follows; it asks first where the row would replace another. A stack
// that was typed is the run's then. Changed says whether the study is another.
func (k *Keypad) Next(s *Session) (changed bool) {
	asked := k.Asked
	k.answer()
	run := Runs(s.doc)[k.Run]
	if k.Stacked {
		if err := k.enterStack(s, run); err != nil {
			k.At, k.Fault = StackField, err.Error()
			return false
		}
		changed = true
	}
	if k.At == StackField {
		k.toRow()
		return changed
	}
	if _, err := k.read(s, run, k.At); err != nil {
		k.Fault = err.Error()
		return changed
	}
	if k.At < RightField {
		k.Go(k.At + 1)
		return changed
	}
	return k.enter(s, run, asked) || changed
}

// enterStack reads the stack and makes it the run's.
func (k *Keypad) enterStack(s *Session, run Run) error {
	mm, err := NumbersOf(s.doc).ParseLength(k.Texts[StackField])
	if err == nil {
		err = s.SetStack(run, exact(s.doc.Units.FromMillimetres(mm)))
	}
	if err == nil {
		k.Stacked = false
		k.Settle(s)
	}
	return err
}

// enter makes the row one of the run's, unless it has to be asked first.
func (k *Keypad) enter(s *Session, run Run, asked bool) bool {
	row, err := k.row(s, run)
	if err == nil && !asked {
		k.Fault = k.replaces(s, run, row)
		k.Asked = k.Fault != ""
	}
	switch {
	case err != nil || k.Asked:
	case k.Opened != nil:
		err = s.ChangeReading(run, *k.Opened, row)
	default:
		err = s.AddReading(run, row)
	}
	if err != nil {
		k.Fault = err.Error()
	}
	if k.Fault != "" {
		return false
	}
	if k.Opened != nil {
		k.moved(row.Travel)
		k.Close(s)
	} else {
		k.begin(s, row)
	}
	return true
}

// moved remembers that the row that was opened stands at another travel now.
func (k *Keypad) moved(travel float64) {
	if k.Last != nil && *k.Last == *k.Opened {
		k.Last = &travel
	}
	k.Order = slices.Clone(k.Order)
	if i := slices.Index(k.Order, *k.Opened); i >= 0 {
		k.Order[i] = travel
	}
}

// begin begins the row after another. Where the reader left the study's spacing and the own
// one is not known yet, that is asked for first.
func (k *Keypad) begin(s *Session, row *ReadingRow) {
	typed := k.Typed
	*k = Keypad{Run: k.Run, Last: &row.Travel, Order: append(k.Order[:len(k.Order):len(k.Order)], row.Travel), Follow: k.Follow, Fine: k.Fine, Units: k.Units}
	if k.Settle(s); k.proposed != nil && (k.proposed.Own || !typed) {
		k.At = LeftField
	}
	k.Fresh = true
}

// Open opens a row that was entered, to be changed, at a field.
func (k *Keypad) Open(s *Session, row *RunRow, f ReadingField) {
	if k.Opened == nil {
		k.Aside = &Aside{k.At, k.Texts, k.Typed}
	}
	k.Opened, k.Typed = &row.Travel, true
	k.Texts[TravelField] = NumbersOf(s.doc).TravelNumber(s.doc.Units.Millimetres(row.Travel))
	for side, x := range row.Values {
		k.Texts[LeftField+ReadingField(side)] = k.ReadingText(s.doc, x)
	}
	k.Go(f)
}

// Close goes back to the row that was being typed before one was opened.
func (k *Keypad) Close(s *Session) {
	k.close()
	k.answer()
	k.Settle(s)
}

func (k *Keypad) close() {
	if k.Opened == nil {
		return
	}
	k.Opened, k.Fresh = nil, true
	if a := k.Aside; a != nil {
		k.At, k.Typed, k.Aside = a.At, a.Typed, nil
		copy(k.Texts[:StackField], a.Texts[:StackField])
	}
}
