package model_test

import (
	"cmp"
	"fmt"
	"maps"
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
	if _, err := s.AddRun(); err != nil {
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
		{"two points", "|1.2.3|", model.LeftField, "is not a length"},
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
	for _, text := range []string{"", "{", `{"at": 4}`, `{"run": -1}`, `{"texts": 5}`} {
		if k := model.ParseKeypad(text); k.Draft() != "" {
			t.Errorf("%q is %+v, want nothing typed", text, k)
		}
	}
}

// plainRows is what the keypad is to do, on a list of rows in mm.
type plainRows struct {
	rows      map[float64][2]string
	grid      []float64 // upwards
	direction string
	last      *float64
	texts     [3]string
	at        int
	own       bool // the travel is typed
	fresh     bool // the next key replaces the text
	asked     bool
}

// read reports whether a travel was read, as it is shown.
func (p *plainRows) read(x float64) bool {
	for r := range p.rows {
		if fmt.Sprintf("%.2f", r) == fmt.Sprintf("%.2f", x) {
			return true
		}
	}
	return false
}

// next is the travel to be proposed, and whether it follows the last two.
func (p *plainRows) next() (x float64, follows, ok bool) {
	up := p.direction != "droop"
	ways := []bool{up, !up}
	if p.direction != "" {
		ways = ways[:1]
	}
	stride := 0.0
	for _, r := range slices.Sorted(maps.Keys(p.rows)) {
		if p.last != nil && fmt.Sprintf("%.2f", r) != fmt.Sprintf("%.2f", *p.last) && (stride == 0 || abs(*p.last-r) < abs(stride)-1e-6) {
			stride = *p.last - r
		}
	}
	if abs(stride) < 0.07 { // the grid, as the run goes
		for _, way := range ways {
			for i := range p.grid {
				if !way {
					i = len(p.grid) - 1 - i
				}
				if x := p.grid[i]; !p.read(x) && (p.last == nil || way == (x > *p.last) && x != *p.last) {
					return x, false, true
				}
			}
		}
		return 0, false, false
	}
	if x, ok := p.walk(*p.last, stride, true); ok {
		return x, true, true
	}
	if p.direction != "" {
		return 0, false, false
	}
	end := *p.last
	for r := range p.rows {
		if (r-end)*stride < 0 {
			end = r
		}
	}
	x, ok = p.walk(end, -stride, false)
	return x, true, ok
}

// walk goes on by strides, or along the grid where the stride is one of its steps, to what
// was not read.
func (p *plainRows) walk(from, stride float64, beyondRead bool) (float64, bool) {
	most := 20.0
	for r := range p.rows {
		most = max(most, abs(r))
	}
	for x := from; ; {
		x = p.stepped(x, stride)
		switch {
		case abs(x) > most+0.01:
			return 0, false
		case !p.read(x) || !beyondRead:
			return x, true
		}
	}
}

func (p *plainRows) stepped(x, stride float64) float64 {
	same := func(a, b float64) bool { return fmt.Sprintf("%.2f", a+0) == fmt.Sprintf("%.2f", b+0) }
	for i := range p.grid {
		if stride > 0 && i > 0 && same(p.grid[i], x) && same(p.grid[i-1], x-stride) {
			return append(p.grid, 1000)[i+1]
		}
		if stride < 0 && i < len(p.grid)-1 && same(p.grid[i], x) && same(p.grid[i+1], x-stride) {
			return append([]float64{1000}, p.grid...)[i]
		}
	}
	return x + stride
}

func abs(x float64) float64 { return max(x, -x) }

// shownTravel writes a travel as the field does.
func shownTravel(x float64) string {
	text := strconv.FormatFloat(x, 'f', 3, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		text = "0"
	}
	return strings.Replace(text, "-", "−", 1)
}

// propose shows the travel of the next row.
func (p *plainRows) propose() {
	if !p.own {
		p.texts[0] = ""
		if x, _, ok := p.next(); ok {
			p.texts[0] = shownTravel(x)
		}
	}
}

func (p *plainRows) press(key string) {
	p.asked = false
	text := p.texts[p.at]
	if (p.fresh || p.at == 0 && !p.own) && key != "⌫" {
		text = ""
	}
	p.fresh = false
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
		p.at, p.fresh = p.at+1, true
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
	if next, _, ok := p.next(); ok && !p.own {
		x = next
	}
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
	typed := p.own
	*p = plainRows{rows: p.rows, grid: p.grid, direction: p.direction, last: &x, fresh: true}
	if _, follows, ok := p.next(); ok && (follows || !typed) {
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
		want := &plainRows{rows: map[float64][2]string{}, grid: []float64{-20, -15, 0, 15, 20}, direction: direction}
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
				want.at, want.asked, want.fresh = f, false, true
			case n == 18:
				did = append(did, "load anew")
				*k = model.ParseKeypad(k.Draft())
				want.asked = false
			default:
				f := random.IntN(3)
				did = append(did, fmt.Sprintf("type 3 into %d", f))
				k.Type(model.ReadingField(f), "3")
				want.at, want.asked, want.fresh, want.texts[f], want.own = f, false, false, "3", want.own || f == 0
			}
			k.Settle(s)
			want.propose()
			if int(k.At) != want.at || [3]string(k.Texts[:3]) != want.texts || k.Asked != want.asked || rows(s) != want.String() {
				t.Fatalf("seed %d: after %s\n%q at %d, asked %t, rows %q (%s)\nwant %q at %d, asked %t, rows %q",
					seed, strings.Join(did, " "), k.Texts, k.At, k.Asked, rows(s), k.Fault, want.texts, want.at, want.asked, want.String())
			}
		}
	}
}

// TestKeypadReplaces goes back to fields: the first key replaces what stands there, unless it
// takes the last letter off.
func TestKeypadReplaces(t *testing.T) {
	for _, tt := range []struct{ name, keys, want string }{
		{"a digit", "1", "1"},
		{"and those behind it", "12", "12"},
		{"the last letter off", "⌫1", "1.21"},
		{"a sign", "±1", "−1"},
	} {
		s, k := gauging(t, "mm", "")
		typed(s, k, "|1.25|")
		k.Go(model.LeftField)
		if typed(s, k, tt.keys); k.Texts[model.LeftField] != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, k.Texts[model.LeftField], tt.want)
		}
	}
}

// TestKeypadOpensARow changes a row that was entered, in the middle of another.
func TestKeypadOpensARow(t *testing.T) {
	for _, tt := range []struct{ name, keys, want string }{
		{"one side, and the other stays to the last digit", "7||", "-20: 7 2.00049; "},
		{"a side is taken out", "⌫⌫⌫⌫||", "-20: none 2.00049; "},
		{"another travel", "<±18|||", "-18: 1 2.00049; "},
	} {
		s, k := gauging(t, "mm", "")
		typed(s, k, "|1|2.00049|3.")
		row := model.Runs(s.Document())[0].Rows(s.Document())[0]
		k.Open(s, &row, model.LeftField)
		if keys, ok := strings.CutPrefix(tt.keys, "<"); ok {
			k.Go(model.TravelField)
			typed(s, k, keys)
		} else {
			typed(s, k, tt.keys)
		}
		if rows(s) != tt.want || k.Opened != nil || k.Texts[model.LeftField] != "3." || k.At != model.LeftField || k.Texts[model.TravelField] != "−15" {
			t.Errorf("%s: rows %q, then %q at %d, want %q and the half row back; %s", tt.name, rows(s), k.Texts, k.At, tt.want, k.Fault)
		}
	}
}

// TestKeypadFine types a reading in the marks of a dial, and shows the next one otherwise.
func TestKeypadFine(t *testing.T) {
	for _, tt := range []struct {
		units study.Units
		want  string
	}{{"mm", "-20: -1.25 0.125; "}, {"in", "-20: -3.175 0.3175; "}} {
		s, k := gauging(t, tt.units, "")
		k.SetFine(true)
		typed(s, k, "|±125|12.5")
		k.SetFine(false)
		k.Settle(s)
		if typed(s, k, "|"); rows(s) != tt.want {
			t.Errorf("%s: rows %q, want %q; %q, %s", tt.units, rows(s), tt.want, k.Texts, k.Fault)
		}
	}
}

// TestKeypadStacks begins runs: the stack goes on by the spacing of the last two, and is typed
// as anything else.
func TestKeypadStacks(t *testing.T) {
	s, k := gauging(t, "mm", "")
	var says []string
	for _, keys := range []string{"±3|", "|", "1.5|"} {
		if err := k.Begin(s); err != nil {
			t.Fatal(err)
		}
		typed(s, k, keys)
		runs := model.Runs(s.Document())
		st, ok := s.StackOf(runs[k.Run])
		says = append(says, fmt.Sprint(k.Run, st.Value, ok, k.At))
	}
	if want := []string{"1 -3 true 0", "2 -6 true 0", "3 1.5 true 0"}; !slices.Equal(says, want) {
		t.Errorf("run, stack, field: %q, want %q", says, want)
	}
	if typed(s, k, "±"); k.Stacked {
		t.Error("a key on the travel is taken for the stack")
	}
	k.Go(model.StackField)
	typed(s, k, "1.2.3|")
	if k.At != model.StackField || !strings.Contains(k.Fault, "is not a length") {
		t.Errorf("%q at %d, want the stack refused", k.Fault, k.At)
	}
}

// TestThreeStacks enters three stacks of five heights, both sides, in thousandths of an inch,
// and counts the keys: the fewest that a racer with one thumb needs on a study without runs.
func TestThreeStacks(t *testing.T) {
	s := template(t, "double-wishbone-rack")
	err := s.Edit("inches", "", func(d *study.Document) {
		d.Readings, d.Display = nil, &study.Display{Units: study.Inch}
		d.Travel = &study.Travel{Bump: 50.8, Droop: 50.8, Step: 12.7}
	})
	if err != nil {
		t.Fatal(err)
	}
	runs := [][]string{ // stack, then what the gauge read at -2, -1, 0, 1 and 2 in: invented
		{"", "114", "163", "66", "92", "±5", "0", "±58", "±72", "±131", "±150"},
		{"±.25", "87", "121", "38", "71", "2", "4", "±31", "±44", "±86", "±102"},
		{"", "52", "80", "20", "44", "0", "±3", "±13", "±24", "±48", "±60"},
	}
	k, digits, others := &model.Keypad{}, 0, 1
	k.SetFine(true) // one press
	press := func(keys string) {
		for _, key := range keys {
			if digits++; !strings.ContainsRune("0123456789", key) {
				digits--
				others++
			}
			typed(s, k, string(key))
		}
	}
	for i, run := range runs {
		if others++; k.Begin(s) != nil { // one press
			t.Fatal("no run")
		}
		press(run[0] + "|")
		for row := range 5 {
			switch {
			case i == 0 && row == 0:
				press("±2|")
			case i == 0 && row == 1:
				press("±1|")
			}
			press(run[1+2*row] + "|" + run[2+2*row] + "|")
			if k.Fault != "" {
				t.Fatal(k.Fault)
			}
		}
	}
	var got []string
	for _, run := range model.Runs(s.Document()) {
		for _, row := range run.Rows(s.Document()) {
			got = append(got, fmt.Sprintf("%.3f:%.0f,%.0f", row.Travel/25.4, *row.Values[0]/0.0254, *row.Values[1]/0.0254))
		}
	}
	want := []string{"-2.000:114,163", "-1.000:66,92", "0.000:-5,0", "1.000:-58,-72", "2.000:-131,-150",
		"-2.000:87,121", "-1.000:38,71", "0.000:2,4", "1.000:-31,-44", "2.000:-86,-102",
		"-2.000:52,80", "-1.000:20,44", "0.000:0,-3", "1.000:-13,-24", "2.000:-48,-60"}
	if !slices.Equal(got, want) {
		t.Errorf("entered %q,\nwant %q", got, want)
	}
	if t.Logf("%d keys, %d of them no digits", digits+others, others); digits+others > 190 || others > 60 {
		t.Errorf("%d keys, %d of them no digits, want at most 190 and 60", digits+others, others)
	}
}
