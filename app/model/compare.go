package model

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// CarAnswer is what the engine's calls say of one car, as far as they have answered: what
// is nil is still to come.
type CarAnswer struct {
	Sides  []engine.Compared // left, then right
	Served *engine.Served    // nil too where the search has neither set-ups nor limits
	Loads  *engine.LoadsResult
	Series *engine.ToleranceResult

	// Why there is no answer; empty where there is one or it is still to come.
	CompareFault, LoadsFault, SeriesFault string
}

// CompareOrder says by which row the columns of a comparison are sorted.
type CompareOrder struct {
	Key  string // of a row; the order of the study where empty
	Back bool   // the best last
}

// String writes the order, for [ParseCompareOrder].
func (o CompareOrder) String() string {
	if o.Back {
		return "-" + o.Key
	}
	return o.Key
}

// ParseCompareOrder reads what [CompareOrder.String] wrote.
func ParseCompareOrder(text string) CompareOrder {
	key, back := strings.CutPrefix(text, "-")
	return CompareOrder{key, back}
}

// Comparison is a study's cars beside each other: a column for each car, that of the
// reference first, and a row for each figure.
type Comparison struct {
	Cars []*Car
	Rows []CompareRow
}

// CompareRow is a figure of all cars.
type CompareRow struct {
	Key     string
	Label   string
	Note    string // unit and bounds
	Meaning string
	Part    int    // of the table; rows of one part stand together
	Usual   bool   // shown where nobody has chosen
	Lacks   string // what the study must state for it, and where; empty where it is stated
	Cells   []CompareCell
}

// CompareCell is a figure of one car. The zero cell has none.
type CompareCell struct {
	Text   []string // left and right where they differ, else of both
	Spare  string   // how far a limit is from being broken, or broken by
	Title  string   // where or why
	Broken bool     // a limit is
	Best   bool     // no other car is better
	Waits  bool     // it is being computed
	// Bar is the figure by the largest of the row, 0 to 1, where bars show it; 0 where not.
	Bar float64

	worse float64 // of both sides
	value [2]float64
}

// Compare puts the cars of the desk beside each other. Answers are those of the cars by
// their index; shown says which rows are wanted, nil those that usually are.
func (d *Desk) Compare(answers map[int]*CarAnswer, by CompareOrder, differences bool, shown func(*CompareRow) bool) *Comparison {
	cars := d.Session.Cars()
	c := &comparer{desk: d, n: NumbersOf(d.Session.Document()), cars: cars, answers: answers, differences: differences}
	if cars.Err != nil || len(cars.List) == 0 {
		return &Comparison{}
	}
	c.reference = cars.At(d.View.Yardstick)
	if c.reference == nil {
		c.reference = cars.Base()
	}
	sources := c.sources()
	out := &Comparison{Cars: c.order(sources, by)}
	for i := range sources {
		if r := &sources[i].CompareRow; shown == nil && !r.Usual || shown != nil && !shown(r) {
			continue
		}
		out.Rows = append(out.Rows, c.row(&sources[i], out.Cars))
	}
	return out
}

// CompareRows lists the rows that the study has, without cells, for a list to choose from.
func (d *Desk) CompareRows() (rows []CompareRow) {
	cars := d.Session.Cars()
	if cars.Err != nil {
		return nil
	}
	c := &comparer{desk: d, n: NumbersOf(d.Session.Document()), cars: cars}
	for _, s := range c.sources() {
		rows = append(rows, s.CompareRow)
	}
	return rows
}

// comparer makes a comparison.
type comparer struct {
	desk        *Desk
	n           Numbers
	cars        *Cars
	reference   *Car
	answers     map[int]*CarAnswer
	differences bool
}

// answer returns what is known of a car.
func (c *comparer) answer(car *Car) *CarAnswer {
	if a := c.answers[car.Index]; a != nil {
		return a
	}
	return &CarAnswer{}
}

// file returns the unit of the study's lengths.
func (c *comparer) file() study.Units { return c.desk.Session.Document().Units }

// better says which of two values is the better one.
type better int8

const (
	neither better = iota
	less           // in size
	more
)

// rowSource is a row and how its cells are made.
type rowSource struct {
	CompareRow
	better better
	bars   bool                       // stock beside new is shown by length too
	place  bool                       // no difference of it says anything
	cell   func(car *Car) CompareCell // without texts
	write  func(x float64) string     // a value, or a difference of two
}

// order returns the cars in the order of the columns.
func (c *comparer) order(sources []rowSource, by CompareOrder) []*Car {
	list := make([]*Car, 0, len(c.cars.List))
	for _, car := range c.cars.List {
		if car != c.reference {
			list = append(list, car)
		}
	}
	for i := range sources {
		if s := &sources[i]; s.Key == by.Key {
			s.sort(list, by.Back)
		}
	}
	return append([]*Car{c.reference}, list...)
}

// sort puts the best car first, or last; those without a value come last always.
func (s *rowSource) sort(list []*Car, back bool) {
	slices.SortStableFunc(list, func(a, b *Car) int {
		x, y := s.rank(a), s.rank(b)
		if xn, yn := math.IsNaN(x), math.IsNaN(y); xn || yn {
			return cmp.Compare(rank(xn), rank(yn))
		}
		if back {
			x, y = y, x
		}
		return cmp.Compare(x, y)
	})
}

// rank returns a number that is the less the better a car is.
func (s *rowSource) rank(car *Car) float64 {
	if car.Err != nil {
		return math.NaN()
	}
	cell := s.cell(car)
	cell.judge(s.better)
	if s.better == more {
		return -cell.worse
	}
	return cell.worse
}

// judge sets the value of the worse side.
func (k *CompareCell) judge(b better) {
	l, r := k.value[0], k.value[1]
	switch b {
	case less:
		k.worse = max(math.Abs(l), math.Abs(r)) // NaN stays
	case more:
		k.worse = min(l, r)
	default:
		k.worse = max(l, r)
	}
}

// row fills the cells of a row.
func (c *comparer) row(s *rowSource, cars []*Car) CompareRow {
	row := s.CompareRow
	var from CompareCell
	for i, car := range cars {
		cell := CompareCell{value: [2]float64{math.NaN(), math.NaN()}}
		if car.Err == nil && row.Lacks == "" {
			cell = s.cell(car)
		}
		cell.judge(s.better)
		if i == 0 {
			from = cell
		}
		c.write(s, &cell, &from, i > 0)
		row.Cells = append(row.Cells, cell)
	}
	if s.better != neither {
		markBest(row.Cells, s)
	}
	if s.bars {
		setBars(row.Cells)
	}
	return row
}

// setBars sets the cells' bars by the largest of them, and their ratios to the reference.
func setBars(cells []CompareCell) {
	most := 0.0
	for i := range cells {
		if x := math.Abs(cells[i].worse); x > most {
			most = x
		}
	}
	for i := range cells {
		if x := math.Abs(cells[i].worse) / most; x >= 0 {
			cells[i].Bar = x
		}
		if by := math.Abs(cells[i].worse / cells[0].worse); i > 0 && by <= math.MaxFloat64 {
			cells[i].Spare = "× " + number.Decimal(by, 2)
		}
	}
}

// write sets the texts of a cell, those of its difference from the reference's where they
// are wanted.
func (c *comparer) write(s *rowSource, cell, from *CompareCell, other bool) {
	if cell.Waits {
		return
	}
	for side := range cell.value {
		text := s.write(cell.value[side])
		if c.differences && other && !s.place {
			by := cell.value[side] - from.value[side]
			text = number.Signed(by, s.write(by))
		}
		if side == 0 || text != cell.Text[0] {
			cell.Text = append(cell.Text, text)
		}
	}
}

// markBest marks the best cells of a row, unless all cars are alike in it. What is written
// alike is alike.
func markBest(cells []CompareCell, s *rowSource) {
	best := math.NaN()
	for i := range cells {
		x := cells[i].worse
		if math.IsNaN(best) || s.better == less && x < best || s.better == more && x > best {
			best = x
		}
	}
	if math.IsNaN(best) {
		return
	}
	text, others := s.write(best), false
	for i := range cells {
		if k := &cells[i]; !math.IsNaN(k.worse) {
			k.Best = s.write(k.worse) == text
			others = others || !k.Best
		}
	}
	for i := range cells {
		cells[i].Best = cells[i].Best && others
	}
}

// once returns a cell of a figure that a car has once.
func once(x float64) CompareCell { return CompareCell{value: [2]float64{x, x}} }

// waiting is the cell of a figure that is still being computed.
func waiting() CompareCell {
	return CompareCell{Waits: true, value: [2]float64{math.NaN(), math.NaN()}}
}

// yet is the cell of a figure whose answer failed, or has not come; pending says that it is
// either.
func yet(come bool, fault string) (k CompareCell, pending bool) {
	switch {
	case fault != "":
		return missing(fault), true
	case !come:
		return waiting(), true
	}
	return k, false
}

// missing is the cell of a figure that cannot be had, and why.
func missing(why string) CompareCell {
	k := once(math.NaN())
	k.Title = why
	return k
}
