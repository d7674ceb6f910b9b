package study

import (
	"fmt"
	"strconv"
	"strings"

	"toewright/internal/strictjson"
)

// limits bound a study file. They are far above any car and any catalogue, and
// low enough that a hostile file costs little.
var limits = strictjson.Limits{
	Bytes:     4 << 20,
	Depth:     16,
	Values:    200_000,
	Magnitude: 1e9,
}

// Decode reads a study file. The error is a [*strictjson.Error] that names the
// first key that is unknown, missing, repeated, of the wrong type or cannot be
// used, with its line and column.
func Decode(data []byte) (*Document, error) {
	tree, err := strictjson.Parse(data, limits)
	if err != nil {
		return nil, err
	}
	return decodeTree(tree)
}

// decodeTree reads the study that a tree holds.
func decodeTree(tree *strictjson.Tree) (*Document, error) {
	if err := checkFormat(tree); err != nil {
		return nil, err
	}
	d := new(Document)
	if err := tree.Bind(d); err != nil {
		return nil, err
	}
	if p := d.firstProblem(); p != nil {
		return nil, tree.Errorf(p.path, "%s", p.message)
	}
	return d, nil
}

// checkFormat refuses other formats before any of their keys are looked at.
func checkFormat(tree *strictjson.Tree) error {
	root := tree.Root
	if root.Kind != strictjson.Object {
		return tree.Errorf("", "want a study, an object that starts with {\"format\": %q", Format)
	}
	format := root.Get("format")
	switch {
	case format == nil:
		return tree.Errorf("format", "missing; a study states \"format\": %q", Format)
	case format.Kind != strictjson.String:
		return tree.Errorf("format", "want the text %q", Format)
	case format.Text == Format:
		return nil
	}
	return tree.Errorf("format", "%s", formatProblem(format.Text))
}

// formatProblem says why a format cannot be read.
func formatProblem(format string) string {
	version, ok := strings.CutPrefix(format, "toewright/")
	if n, err := strconv.Atoi(version); ok && err == nil && n > 1 {
		return fmt.Sprintf("%q was written by a newer version; this one reads %q: update it, nothing was changed", format, Format)
	}
	return fmt.Sprintf("%.40q is not a format of a study, want %q", format, Format)
}

// UnmarshalJSON reads a study as [Decode] does, for messages that carry one.
func (d *Document) UnmarshalJSON(data []byte) error {
	decoded, err := Decode(data)
	if err != nil {
		return err
	}
	*d = *decoded
	return nil
}
