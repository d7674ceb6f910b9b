package model

import "fmt"

// ReadingField is a field of the form for readings.
type ReadingField int

// The fields in the order in which a thumb goes through them.
const (
	TravelField ReadingField = iota
	LeftField
	RightField
	readingFields
)

// Keypad enters gauge readings with one thumb: travel, left, right, then the next row.
// The zero Keypad is ready to use.
type Keypad struct {
	At    ReadingField
	Texts [readingFields]string
}

// ReadingRow is a row of readings as it was typed, in mm. A side that was left empty was
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

// Press takes in a key.
func (k *Keypad) Press(key string) {
	text := &k.Texts[k.At]
	runes := []rune(*text)
	switch {
	case key == BackKey:
		if len(runes) > 0 {
			*text = string(runes[:len(runes)-1])
		}
	case key == SignKey && len(runes) > 0 && runes[0] == '−':
		*text = string(runes[1:])
	case key == SignKey:
		*text = "−" + *text
	case len(runes) >= mostTyped:
	case key == SpaceKey:
		*text += " "
	default:
		*text += key
	}
}

// Next goes to the next field. Behind the last one it returns the row, and begins the
// one that follows: the same step of travel further on. The error says which field
// cannot be read; it becomes the one that is typed.
func (k *Keypad) Next(n Numbers) (*ReadingRow, error) {
	if _, err := k.parse(n, k.At); err != nil {
		return nil, err
	}
	if k.At < RightField {
		k.At++
		return nil, nil
	}
	row, err := k.row(n)
	if err != nil {
		return nil, err
	}
	k.Texts, k.At = [readingFields]string{}, LeftField
	return row, nil
}

// row reads all fields.
func (k *Keypad) row(n Numbers) (*ReadingRow, error) {
	var row ReadingRow
	for f := range readingFields {
		mm, err := k.parse(n, f)
		if err != nil {
			k.At = f
			return nil, err
		}
		switch {
		case f == TravelField:
			row.Travel = *mm
		case f == LeftField:
			row.Left = mm
		default:
			row.Right = mm
		}
	}
	if row.Left == nil && row.Right == nil {
		k.At = LeftField
		return nil, fmt.Errorf("type the reading of at least one side")
	}
	return &row, nil
}

// parse reads a field. An empty one is nil; the travel must not be.
func (k *Keypad) parse(n Numbers, f ReadingField) (*float64, error) {
	if k.Texts[f] == "" && f != TravelField {
		return nil, nil
	}
	mm, err := n.ParseLength(k.Texts[f])
	if err != nil {
		return nil, err
	}
	return &mm, nil
}

// Expect fills in the travel that the next row most likely has, in mm.
func (k *Keypad) Expect(n Numbers, travel float64) {
	if k.Texts[TravelField] == "" {
		k.Texts[TravelField] = n.LengthNumber(travel)
	}
}
