package study

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"toewright/internal/strictjson"
)

// checkCandidates looks for candidates that cannot be told apart by name or that
// change nothing.
func checkCandidates(d *Document) []Finding {
	var found []Finding
	seen := map[string]bool{BaseName: true}
	for i, c := range d.Candidates {
		path := fmt.Sprintf("candidates.%d", i)
		switch {
		case strings.TrimSpace(c.Name) == "":
			found = append(found, Finding{path + ".name", Warning, "has no name", "name it by what is changed"})
		case seen[c.Name]:
			found = append(found, Finding{path + ".name", Warning, fmt.Sprintf("the name %q is taken", c.Name), "give it a name of its own; \"base\" is the car as measured"})
		case len(c.Changes) == 0:
			found = append(found, Finding{path + ".changes", Note, "changes nothing, so it is the base car", ""})
		}
		found = append(found, rodFindings(path, &c)...)
		seen[c.Name] = true
	}
	return found
}

// rodFindings looks for the length of a rod that is changed where toe is re-set.
func rodFindings(path string, c *Candidate) []Finding {
	if c.Hold != nil && !slices.Contains(c.Hold, "toe") {
		return nil
	}
	for _, key := range slices.Sorted(maps.Keys(c.Changes)) {
		if name, _, _ := strings.Cut(key, "@"); name == "tieRodLength" || name == "dragLinkLength" {
			return []Finding{{path + ".changes." + key, Warning, "does nothing where static toe is re-set", "hold camber and caster alone"}}
		}
	}
	return nil
}

// checkJobs looks for what keeps a search, a fit or a tolerance study that the
// file describes from running.
func checkJobs(d *Document) []Finding {
	var found []Finding
	if d.Search != nil {
		found = append(found, findingOf(d.ReadyToSearch())...)
	}
	if len(d.Readings) > 0 {
		found = append(found, findingOf(d.ReadyToFit())...)
	}
	if len(d.Tolerances) > 0 {
		found = append(found, findingOf(d.ReadyForTolerance())...)
	}
	return found
}

// findingOf turns an error that names a key into a finding, nil into none.
func findingOf(err error) []Finding {
	var e *strictjson.Error
	if !errors.As(err, &e) {
		return nil
	}
	return []Finding{{Path: e.Path, Severity: Warning, Message: e.Message}}
}

// checkNames looks for names of candidates and parts that no longer exist.
func checkNames(d *Document) []Finding {
	var found []Finding
	if d.Display != nil {
		found = append(found, d.checkCandidateName("display.yardstick", d.Display.Yardstick)...)
	}
	parts := map[string]bool{}
	for _, p := range d.Catalogue {
		parts[p.Name] = true
	}
	for i, p := range d.Catalogue {
		for j, name := range p.Excludes {
			if !parts[name] {
				found = append(found, Finding{fmt.Sprintf("catalogue.%d.excludes.%d", i, j), Warning, fmt.Sprintf("no part is called %q", name), "correct the name or take it out"})
			}
		}
	}
	return found
}

// checkCandidateName looks for a candidate that is referred to but gone.
func (d *Document) checkCandidateName(path, name string) []Finding {
	if name == "" || name == BaseName || d.Candidate(name) != nil {
		return nil
	}
	return []Finding{{path, Warning, fmt.Sprintf("no candidate is called %q", name), "choose another"}}
}
