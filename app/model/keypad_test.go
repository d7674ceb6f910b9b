package model_test

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// typed presses keys, each letter one, and Next at every |.
func typed(s *model.Session, k *model.Keypad, keys string) {
	for _, key := range keys {
		if key == '|' {
			k.Next(s)
		} else {
			k.Press(string(key))
		}
	}
}

// gauging returns a session with one empty run of the gauge, and its keypad.
func gauging(t *testing.T, units study.Units, direction string) (*model.Session, *model.Keypad) {
	t.Helper()
	s := template(t, "double-wishbone-rack")
	err := s.Edit("one run", "", func(d *study.Document) {
		d.Travel, d.Readings = &study.Travel{Bump: 20, Droop: 20, Step: 15}, nil
		d.Display = &study.Display{Units: units}
	})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.AddRun(s.Cars().At(0)); err != nil {
		t.Fatal(err)
	}
	run := model.Runs(s.Document())[0]
	if err := s.SetRun(run, "direction", func(r *study.Reading) { r.Direction, r.Base = direction, 300 }); err != nil {
		t.Fatal(err)
	}
	k := &model.Keypad{}
	k.Settle(s)
	return s, k
}

// rows writes the rows of the first run.
func rows(s *model.Session) string {
	var b strings.Builder
	for _, row := range model.Runs(s.Document())[0].Rows(s.Document()) {
		fmt.Fprintf(&b, "%.6g:", row.Travel)
		for _, x := range row.Values {
			if x != nil {
				fmt.Fprintf(&b, " %.6g", *x)
			} else {
				b.WriteString(" none")
			}
		}
		b.WriteString("; ")
	}
	return b.String()
}

func TestKeypad(t *testing.T) {
	tests := []struct {
		name  string
		units study.Units
		keys  string
		want  string
	}{
		{"both sides, the travel as proposed", "mm", "|1.25|±1.3|", "-20: 1.25 -1.3; "},
		{"rows follow one another", "mm", "|1|2|3|4|5|6|", "-20: 1 2; -15: 3 4; 0: 5 6; "},
		{"one side", "mm", "±12||0.5|", "-12: none 0.5; "},
		{"a digit begins a travel of its own", "mm", "4|1||", "4: 1 none; "},
		{"emptied, then typed", "mm", "⌫⌫⌫⌫⌫⌫⌫4|1||", "4: 1 none; "},
		{"sign twice", "mm", "5±±|1||", "5: 1 none; "},
		{"corrected", "mm", "12⌫5|2⌫⌫3||", "15: 3 none; "},
		{"fraction of an inch", "in", "␣1/2|1/32||", "12.7: 0.79375 none; "},
		{"a proposal is exact whatever is shown", "in", "|1||", "-20: 25.4 none; "},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s, k := gauging(t, tt.units, "")
			if typed(s, k, tt.keys); rows(s) != tt.want {
				t.Errorf("typed %q: rows %q, want %q; %s", tt.keys, rows(s), tt.want, k.Fault)
			}
		})
	}
}

// TestKeypadAsks types a travel that was read, which is replaced by a second Next alone.
func TestKeypadAsks(t *testing.T) {
	for _, tt := range []struct{ name, keys, want string }{
		{"asked", "", "-20: 1 2; "},
		{"answered", "|", "-20: 7 8; "},
		{"another travel", "<±12|||", "-20: 1 2; -12: 7 8; "},
	} {
		s, k := gauging(t, "mm", "")
		typed(s, k, "|1|2|")
		k.Go(model.TravelField)
		typed(s, k, "±20|7|8|")
		if !k.Asked || !strings.Contains(k.Fault, "1.00 mm left and 2.00 mm right") {
			t.Fatalf("asked %t: %q, want to hear of both readings", k.Asked, k.Fault)
		}
		if keys, ok := strings.CutPrefix(tt.keys, "<"); ok {
			k.Type(model.TravelField, "")
			typed(s, k, keys)
		} else {
			typed(s, k, tt.keys)
		}
		if rows(s) != tt.want {
			t.Errorf("%s: rows %q, want %q; %s", tt.name, rows(s), tt.want, k.Fault)
		}
	}
}

func TestKeypadRefusals(t *testing.T) {
	tests := []struct {
		name string
		keys string
		at   model.ReadingField
		says string
	}{
		{"no travel", "⌫⌫⌫⌫⌫⌫|", model.TravelField, "type the travel"},
		{"two points", "|1.2.3|", model.LeftField, "is no length"},
		{"neither side", "|||", model.LeftField, "at least one side"},
		{"a travel with a digit too many", "525|", model.TravelField, "525 mm moves the wheel more than twice as far"},
		{"a reading with a digit too many", "|525|", model.LeftField, "525.00 mm is more than half of the gauge's base, 300 mm"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s, k := gauging(t, "mm", "")
			typed(s, k, tt.keys)
			if k.At != tt.at || !strings.Contains(k.Fault, tt.says) || rows(s) != "" {
				t.Errorf("%q at field %d with rows %q, want %q at field %d and none", k.Fault, k.At, rows(s), tt.says, tt.at)
			}
		})
	}
}

// TestKeypadKeepsUnits shows another unit in the middle of a row.
func TestKeypadKeepsUnits(t *testing.T) {
	s, k := gauging(t, "mm", "")
	typed(s, k, "10|1.5|")
	if err := s.SetDisplay("units", func(v *study.Display) { v.Units = study.Inch }); err != nil {
		t.Fatal(err)
	}
	k.Settle(s)
	if typed(s, k, "1/4|"); rows(s) != "10: 1.5 6.35; " {
		t.Errorf("rows %q, want what was typed in mm as it was; %s", rows(s), k.Fault)
	}
}

func TestDraftThatCannotBeRead(t *testing.T) {
	for _, text := range []string{"", "{", `{"at": 3}`, `{"run": -1}`, `{"texts": 5}`} {
		if k := model.ParseKeypad(text); k.Draft() != "" {
			t.Errorf("%q is %+v, want nothing typed", text, k)
		}
	}
}

// plainRows is what the keypad is to do, on a list of rows in mm.
type plainRows struct {
	rows  map[float64][2]string
	grid  []float64 // as the run goes
	way   float64
	last  *float64
	texts [3]string
	at    int
	own   bool // the travel is typed
	asked bool
}

func (p *plainRows) next() (float64, bool) {
	for _, x := range p.grid {
		if _, read := p.rows[x]; !read && (p.last == nil || p.way*(x-*p.last) > 0) {
			return x, true
		}
	}
	return 0, false
}

// propose shows the travel of the next row.
func (p *plainRows) propose() {
	if !p.own {
		p.texts[0] = ""
		if x, ok := p.next(); ok {
			p.texts[0] = strings.Replace(strconv.FormatFloat(x, 'f', -1, 64), "-", "−", 1)
		}
	}
}

func (p *plainRows) press(key string) {
	p.asked = false
	text := p.texts[p.at]
	if p.at == 0 && !p.own && key != "⌫" {
		text = ""
	}
	_, size := len(text), len("−")
	switch {
	case key == "⌫" && strings.HasSuffix(text, "−"):
		text = text[:len(text)-size]
	case key == "⌫":
		text = text[:max(len(text)-1, 0)]
	case key == "±" && strings.HasPrefix(text, "−"):
		text = text[size:]
	case key == "±":
		text = "−" + text
	case len([]rune(text)) < 12:
		text += key
	}
	p.texts[p.at], p.own = text, p.own || p.at == 0
}

// numberIn reads a text.
func numberIn(text string) (x float64, ok bool) {
	x, err := strconv.ParseFloat(strings.Replace(text, "−", "-", 1), 64)
	return x, err == nil
}

// good reports whether a field can be left.
func (p *plainRows) good(f int) bool {
	if p.texts[f] == "" {
		return f != 0
	}
	x, ok := numberIn(p.texts[f])
	return ok && max(x, -x) <= [...]float64{40, 150, 150}[f]
}

func (p *plainRows) goOn() {
	asked := p.asked
	p.asked = false
	if !p.good(p.at) {
		return
	}
	if p.at < 2 {
		p.at++
		return
	}
	for f := range 3 {
		if !p.good(f) {
			p.at = f
			return
		}
	}
	if p.texts[1] == "" && p.texts[2] == "" {
		p.at = 1
		return
	}
	x, _ := numberIn(p.texts[0])
	for read := range p.rows {
		if fmt.Sprintf("%.2f", read) == fmt.Sprintf("%.2f", x) {
			x = read
		}
	}
	x += 0 // no minus zero
	row := p.rows[x]
	for side := range row {
		if text := p.texts[side+1]; text != "" {
			if row[side] != "" && !asked {
				p.asked = true
				return
			}
			y, _ := numberIn(text)
			row[side] = fmt.Sprintf("%.6g", y+0)
		}
	}
	p.rows[x] = row
	*p = plainRows{rows: p.rows, grid: p.grid, way: p.way, last: &x}
	if _, ok := p.next(); ok {
		p.at = 1
	}
}

func (p *plainRows) String() string {
	var travels []float64
	for x := range p.rows {
		travels = append(travels, x)
	}
	slices.Sort(travels)
	var b strings.Builder
	for _, x := range travels {
		fmt.Fprintf(&b, "%.6g: %s %s; ", x, cmp.Or(p.rows[x][0], "none"), cmp.Or(p.rows[x][1], "none"))
	}
	return b.String()
}

// TestKeypadAgainstPlainRows presses keys of chance, touches fields and loads the page anew
// in the middle of everything: what is shown and what is entered is what a list of rows has.
func TestKeypadAgainstPlainRows(t *testing.T) {
	keys := []string{"1", "2", "5", "0", "0", ".", "±", "⌫", "⌫"}
	for seed := range uint64(60) {
		random := rand.New(rand.NewPCG(seed, 14))
		direction := []string{"", "bump", "droop"}[seed%3]
		s, k := gauging(t, "mm", direction)
		want := &plainRows{rows: map[float64][2]string{}, grid: []float64{-20, -15, 0, 15, 20}, way: 1}
		if direction == "droop" {
			slices.Reverse(want.grid)
			want.way = -1
		}
		var did []string
		for range 120 {
			want.propose()
			switch n := random.IntN(20); {
			case n < 8:
				did = append(did, "Next")
				k.Next(s)
				want.goOn()
			case n < 17:
				key := keys[random.IntN(len(keys))]
				did = append(did, key)
				k.Press(key)
				want.press(key)
			case n == 17:
				f := random.IntN(3)
				did = append(did, fmt.Sprintf("field %d", f))
				k.Go(model.ReadingField(f))
				want.at, want.asked = f, false
			case n == 18:
				did = append(did, "load anew")
				*k = model.ParseKeypad(k.Draft())
				want.asked = false
			default:
				f := random.IntN(3)
				did = append(did, fmt.Sprintf("type 3 into %d", f))
				k.Type(model.ReadingField(f), "3")
				want.at, want.asked, want.texts[f], want.own = f, false, "3", want.own || f == 0
			}
			k.Settle(s)
			want.propose()
			if int(k.At) != want.at || k.Texts != want.texts || k.Asked != want.asked || rows(s) != want.String() {
				t.Fatalf("seed %d: after %s\n%q at %d, asked %t, rows %q (%s)\nwant %q at %d, asked %t, rows %q",
					seed, strings.Join(did, " "), k.Texts, k.At, k.Asked, rows(s), k.Fault, want.texts, want.at, want.asked, want.String())
			}
		}
	}
}
