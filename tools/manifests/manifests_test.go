package manifests

import (
	"bytes"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	batch "k8s.io/api/batch/v1"
	core "k8s.io/api/core/v1"
	"sigs.k8s.io/yaml"
)

const manual = "../../docs/batch.md"

// examples returns the manifests of the manual.
func examples(t *testing.T) [][]byte {
	t.Helper()
	text, err := os.ReadFile(manual)
	if err != nil {
		t.Fatal(err)
	}
	var list [][]byte
	for _, m := range regexp.MustCompile("(?s)```yaml\n(.*?)```").FindAllSubmatch(text, -1) {
		list = append(list, m[1])
	}
	if len(list) == 0 {
		t.Fatal("the manual has no manifests")
	}
	return list
}

// problem returns what is wrong with a manifest of a job, nil of one that is right: a key
// that there is not or that stands twice, a value of the wrong type or that is no quantity,
// and what names nothing.
func problem(manifest []byte) error {
	var job batch.Job
	if err := yaml.UnmarshalStrict(manifest, &job); err != nil {
		return err
	}
	if job.APIVersion != batch.SchemeGroupVersion.String() || job.Kind != "Job" {
		return fmt.Errorf("%s of %s is not a job", job.Kind, job.APIVersion)
	}
	pod := &job.Spec.Template.Spec
	switch {
	case job.Name == "" || len(pod.Containers) == 0:
		return fmt.Errorf("a name or containers are missing")
	case pod.RestartPolicy != core.RestartPolicyNever && pod.RestartPolicy != core.RestartPolicyOnFailure:
		return fmt.Errorf("restartPolicy %q is none of a job", pod.RestartPolicy)
	case job.Spec.BackoffLimitPerIndex != nil && (pod.RestartPolicy != core.RestartPolicyNever || !indexed(&job)):
		return fmt.Errorf("backoffLimitPerIndex wants restartPolicy Never and indexed completions")
	case indexed(&job) && job.Spec.Completions == nil:
		return fmt.Errorf("indexed completions want their number")
	}
	for i := range pod.Containers {
		if err := ofContainer(pod, &pod.Containers[i]); err != nil {
			return err
		}
	}
	return nil
}

func indexed(job *batch.Job) bool {
	return job.Spec.CompletionMode != nil && *job.Spec.CompletionMode == batch.IndexedCompletion
}

// ofContainer returns what is wrong with a container of a pod.
func ofContainer(pod *core.PodSpec, c *core.Container) error {
	if c.Name == "" || c.Image == "" {
		return fmt.Errorf("a container's name or image is missing")
	}
	for _, m := range c.VolumeMounts {
		if !slices.ContainsFunc(pod.Volumes, func(v core.Volume) bool { return v.Name == m.Name }) {
			return fmt.Errorf("%s mounts %s, which is no volume", c.Name, m.Name)
		}
	}
	for _, m := range regexp.MustCompile(`\$\((\w+)\)`).FindAllStringSubmatch(strings.Join(c.Args, " "), -1) {
		if !slices.ContainsFunc(c.Env, func(e core.EnvVar) bool { return e.Name == m[1] }) {
			return fmt.Errorf("%s has arguments with %s, which its environment has not", c.Name, m[0])
		}
	}
	for name, asked := range c.Resources.Requests {
		if limit, ok := c.Resources.Limits[name]; ok && asked.Cmp(limit) > 0 {
			return fmt.Errorf("%s asks for more %s than its limit", c.Name, name)
		}
	}
	return nil
}

func TestManifestsAreOfTheirTypes(t *testing.T) {
	for _, manifest := range examples(t) {
		if err := problem(manifest); err != nil {
			t.Error(err)
		}
	}
}

// TestShardsAreThoseOfTheJob: a shard's arguments state as many as the job completes.
func TestShardsAreThoseOfTheJob(t *testing.T) {
	for _, manifest := range examples(t) {
		var job batch.Job
		if err := yaml.UnmarshalStrict(manifest, &job); err != nil || job.Spec.Completions == nil {
			t.Fatalf("%v, or no completions", err)
		}
		want := fmt.Sprintf("--shard=$(INDEX)/%d", *job.Spec.Completions)
		if args := job.Spec.Template.Spec.Containers[0].Args; !slices.Contains(args, want) {
			t.Errorf("%q has no %s", args, want)
		}
	}
}

// TestWrongManifestsAreRefused: the examples, each with one thing spoilt.
func TestWrongManifestsAreRefused(t *testing.T) {
	for _, tt := range []struct{ right, wrong string }{
		{"completionMode:", "completionmode2:"},
		{"apiVersion: batch/v1", "apiVersion: batch/v2"},
		{"completions: 100", "completions: many"},
		{"completions: 100", "completions: 100\n  completions: 100"},
		{"  completions: 100\n", ""},
		{"restartPolicy: Never", "restartPolicy: Always"},
		{"runAsNonRoot: true", "runAsNonRoot: often"},
		{"memory: 100Mi", "memory: 100 MB"},
		{"memory: 100Mi", "memory: 100Gi"},
		{"mountPath: /study", "path: /study"},
		{"{name: study, mountPath", "{name: studies, mountPath"},
		{"- name: INDEX", "- name: PLACE"},
		{"claimName:", "claim:"},
	} {
		spoilt := 0
		for _, manifest := range examples(t) {
			if !bytes.Contains(manifest, []byte(tt.right)) {
				continue
			}
			spoilt++
			if problem(bytes.Replace(manifest, []byte(tt.right), []byte(tt.wrong), 1)) == nil {
				t.Errorf("%q in place of %q is taken", tt.wrong, tt.right)
			}
		}
		if spoilt == 0 {
			t.Errorf("no manifest has %q", tt.right)
		}
	}
}
