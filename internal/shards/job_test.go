package shards

import (
	"strings"
	"testing"
)

func TestStrict(t *testing.T) {
	for _, tt := range []struct{ name, text, part string }{
		{"an unknown key", `{"cells": [], "cell": []}`, `"cell"`},
		{"another type", `{"cells": 3}`, "cells"},
		{"more behind", `{"cells": []} {}`, ErrCut.Error()},
		{"a number too large", `{"cells": [1e999]}`, "1e999"},
	} {
		var c cells
		if err := Strict([]byte(tt.text), &c); err == nil || !strings.Contains(err.Error(), tt.part) {
			t.Errorf("%s: error %v, want %q", tt.name, err, tt.part)
		}
	}
}
