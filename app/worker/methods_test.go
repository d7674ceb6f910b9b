package worker_test

import (
	"testing"

	"toewright/app/worker"
	"toewright/internal/calls"
)

// TestMethodsAreThePagesCalls: the worker has the calls that the page makes, and no others.
func TestMethodsAreThePagesCalls(t *testing.T) {
	methods := worker.Handlers()
	for _, c := range calls.All() {
		if got, want := methods[c.Name] != nil, c.Open(calls.Page); got != want {
			t.Errorf("%s is a method: %t, want %t", c.Name, got, want)
		}
		delete(methods, c.Name)
	}
	if len(methods) > 0 {
		t.Errorf("methods that are no calls: %v", methods)
	}
}
