package study

import "toewright/internal/strictjson"

// Asked is a study as it is carried by a call that may have more to say: the study itself,
// or an envelope,
//
//	{"study": .., "name": .., "changes": {..}, "hold": [..]}
//
// with the study or {"digest": ..} of one that was sent before, and one car to be asked for.
type Asked struct {
	Study  *Document // nil where a digest names it
	Text   []byte    // of the study in an envelope; nil of one that was sent plain
	Digest string
	Set    *ChangeSet // nil where no car is changed
}

// ChangeSet is one car that is not among the study's candidates.
type ChangeSet struct {
	Name    string   `json:"name,omitzero"` // [ChangedName] where empty
	Changes Changes  `json:"changes,omitzero"`
	Hold    []string `json:"hold,omitzero"` // as that of a [Candidate]
}

// ChangedName is the name of a car that was given none.
const ChangedName = "changed"

// envelope is what carries a study. Its other keys are those of [ChangeSet].
type envelope struct {
	Study   carried  `json:"study" rule:"required"`
	Name    string   `json:"name,omitzero"`
	Changes Changes  `json:"changes,omitzero"`
	Hold    []string `json:"hold,omitzero"`
}

// carried is a value that is looked at later.
type carried struct{ node *strictjson.Node }

// BindNode implements [strictjson.Binder].
func (c *carried) BindNode(_ strictjson.Scope, n *strictjson.Node) error {
	c.node = n
	return nil
}

// DecodeAsked reads a study, or an envelope with one. Its errors are those of [Decode].
func DecodeAsked(data []byte) (*Asked, error) {
	tree, err := strictjson.Parse(data, limits)
	if err != nil {
		return nil, err
	}
	if tree.Root.Get("study") == nil {
		d, err := decodeTree(tree)
		return &Asked{Study: d}, err
	}
	var e envelope
	if err := tree.Bind(&e); err != nil {
		return nil, err
	}
	a := &Asked{}
	if e.Name != "" || e.Changes != nil || e.Hold != nil {
		a.Set = &ChangeSet{e.Name, e.Changes, e.Hold}
		if err := a.Set.problem(tree); err != nil {
			return nil, err
		}
	}
	if e.Study.node.Get("digest") != nil {
		var named struct {
			Digest string `json:"digest" rule:"required"`
		}
		err := tree.Under("study", e.Study.node).Bind(&named)
		a.Digest = named.Digest
		return a, err
	}
	within := tree.Under("study", e.Study.node)
	a.Text = within.Text()
	a.Study, err = decodeTree(within)
	return a, err
}

// DecodeChangeSet reads one car. Its errors are those of [Decode].
func DecodeChangeSet(data []byte) (*ChangeSet, error) {
	tree, err := strictjson.Parse(data, limits)
	if err != nil {
		return nil, err
	}
	s := new(ChangeSet)
	if err := tree.Bind(s); err != nil {
		return nil, err
	}
	return s, s.problem(tree)
}

func (s *ChangeSet) problem(t *strictjson.Tree) error {
	if s.Name == BaseName {
		return t.Errorf("name", "%q is the car as the study gives it; give another", BaseName)
	}
	return nil
}

// With returns the study with a car before its candidates, in place of those of its name, and
// the car's name. The study itself stays as it is.
func (d *Document) With(s *ChangeSet) (*Document, string) {
	c := Candidate{Name: s.Name, Changes: s.Changes, Hold: s.Hold}
	if c.Name == "" {
		c.Name = ChangedName
	}
	out := *d
	out.Candidates = []Candidate{c}
	for _, k := range d.Candidates {
		if k.Name != c.Name {
			out.Candidates = append(out.Candidates, k)
		}
	}
	return &out, c.Name
}
