package options

import (
	"fmt"
	"strconv"

	"github.com/spf13/pflag"
)

// given is an option that leaves a nil pointer where it is not given.
type given[T int | float64] struct {
	value **T
	parse func(string) (T, error)
	kind  string // of flag, as pflag names its own
	want  string // what a wrong value is not
}

// seed adds the seed of what is drawn at random.
func seed(fs *pflag.FlagSet, value **int, what string) {
	count(fs, value, "seed", "whole `number` that the "+what+" are drawn from, in place of the study's")
}

// count adds a whole number that may be left out.
func count(fs *pflag.FlagSet, value **int, name, usage string) {
	fs.Var(&given[int]{value, strconv.Atoi, "int", "whole number"}, name, usage)
}

// optional adds a number that may be left out.
func optional(fs *pflag.FlagSet, value **float64, name, usage string) {
	parse := func(text string) (float64, error) { return strconv.ParseFloat(text, 64) }
	fs.Var(&given[float64]{value, parse, "float64", "number"}, name, usage)
}

// String implements [pflag.Value].
func (g *given[T]) String() string {
	if g.value == nil || *g.value == nil {
		return ""
	}
	return fmt.Sprint(**g.value)
}

// Type implements [pflag.Value].
func (g *given[T]) Type() string { return g.kind }

// Set implements [pflag.Value].
func (g *given[T]) Set(text string) error {
	x, err := g.parse(text)
	if err != nil {
		return fmt.Errorf("%.40q is no %s", text, g.want)
	}
	*g.value = &x
	return nil
}
