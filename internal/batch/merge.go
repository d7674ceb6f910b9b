package batch

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"strings"

	"toewright/internal/shards"
	"toewright/internal/study"
	"toewright/internal/version"
)

// Merge puts together the parts of one run on one study. Parts come in any order
// and are not kept.
type Merge struct {
	doc   *study.Document
	study StudyID
	work  *Work          // of the first part; nil before it
	first string         // its file
	of    int            // shards of the run
	files map[int]string // by shard
}

// NewMerge returns a merge of no parts yet.
func NewMerge(d *study.Document) (*Merge, error) {
	id, err := identify(d)
	if err != nil {
		return nil, err
	}
	return &Merge{doc: d, study: id, files: map[int]string{}}, nil
}

// Add adds the part in a file. It returns an error that names the file and what to
// do where the part is damaged or of another run, or its shard was added before.
func (m *Merge) Add(file string, data []byte) error {
	if err := m.add(file, data); err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	return nil
}

func (m *Merge) add(file string, data []byte) error {
	p, err := decode(data)
	if err != nil {
		return err
	}
	if err := m.check(p); err != nil {
		return err
	}
	if m.work == nil {
		if err := m.begin(file, p); err != nil {
			return err
		}
	}
	if err := m.compare(p); err != nil {
		return err
	}
	if err := m.work.job.Add(p.Shard, p.Result); err != nil {
		return err
	}
	m.files[p.Shard.Index] = file
	return nil
}

// check returns an error for a part that is not of this study, version and kind of
// machine.
func (m *Merge) check(p *Part) error {
	if p.Version != version.Name() {
		return fmt.Errorf("was written by version %.40s, this is %s; merge with the version that ran the shards", p.Version, version.Name())
	}
	if p.Machine != runtime.GOARCH {
		return fmt.Errorf("was written on %.20s, this is %s, whose last digits differ; merge on a machine of that kind", p.Machine, runtime.GOARCH)
	}
	if p.Study.SHA256 != m.study.SHA256 {
		return fmt.Errorf("is of another study, or of this one before a change (%.60q, %.8s; this is %.60q, %.8s); give the file it was run on, or run its shard again",
			p.Study.Name, p.Study.SHA256, m.study.Name, m.study.SHA256)
	}
	return nil
}

// begin takes the run from its first part.
func (m *Merge) begin(file string, p *Part) error {
	start := commands[p.Command]
	if start == nil {
		return fmt.Errorf("is of the command %.40q, which is not run in shards", p.Command)
	}
	j, err := start(shards.Run{Study: m.doc, Options: p.Options})
	if err != nil {
		return err
	}
	m.work = &Work{j, p.Command, m.study, p.Options}
	m.first, m.of = file, p.Shard.Of
	return nil
}

// compare returns an error for a part that is not of the run of the first one, or
// there already.
func (m *Merge) compare(p *Part) error {
	const again = "leave it out, or run its shard again"
	if p.Command != m.work.command {
		return fmt.Errorf("is of %.40s, %s is of %s; %s", p.Command, m.first, m.work.command, again)
	}
	if !same(p.Options, m.work.options) {
		return fmt.Errorf("has the options %.200s, %s has %.200s; %s", p.Options, m.first, m.work.options, again)
	}
	if p.Shard.Of != m.of {
		return fmt.Errorf("is one of %d shards, %s one of %d; %s", p.Shard.Of, m.first, m.of, again)
	}
	if file, ok := m.files[p.Shard.Index]; ok {
		return fmt.Errorf("is shard %s, which %s was already; give it once", named(p.Shard), file)
	}
	return nil
}

// Command returns whose parts were added, empty before the first.
func (m *Merge) Command() string {
	if m.work == nil {
		return ""
	}
	return m.work.command
}

// Answer returns what the command answers, a result of the engine's type for it. It
// returns an error that names the shards that are missing.
func (m *Merge) Answer(ctx context.Context) (any, error) {
	if m.work == nil {
		return nil, errors.New("no parts were given")
	}
	if len(m.files) < m.of {
		return nil, fmt.Errorf("%d of %d shards are missing: %s; run them and give their files too", m.of-len(m.files), m.of, m.missing())
	}
	return m.work.job.Answer(ctx)
}

// missing lists shards that are missing.
func (m *Merge) missing() string {
	const most = 8 // a line has no room for more
	var list []string
	for i := 0; i < m.of; i++ {
		if _, ok := m.files[i]; ok {
			continue
		}
		if len(list) == most {
			list = append(list, "...")
			break
		}
		list = append(list, fmt.Sprintf("%d/%d", i, m.of))
	}
	return strings.Join(list, ", ")
}
