package options

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"
)

// choice is an option that takes one of a few words.
type choice struct {
	value *string
	words []string
}

// choose adds an option that takes one of words.
func choose(fs *pflag.FlagSet, value *string, name, usage string, words ...string) {
	fs.Var(&choice{value, words}, name, usage+" ("+strings.Join(words, ", ")+")")
}

// String implements [pflag.Value].
func (c *choice) String() string {
	if c.value == nil { // as pflag makes one to ask for its zero value
		return ""
	}
	return *c.value
}

// Type implements [pflag.Value].
func (c *choice) Type() string { return "word" }

// Set implements [pflag.Value].
func (c *choice) Set(word string) error {
	if !slices.Contains(c.words, word) {
		return fmt.Errorf("%.40q is none of %s", word, strings.Join(c.words, ", "))
	}
	*c.value = word
	return nil
}

// Words returns the words that an option takes, nil where it takes anything.
func Words(f *pflag.Flag) []string {
	if c, ok := f.Value.(*choice); ok {
		return c.words
	}
	return nil
}
