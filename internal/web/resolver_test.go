package web

import "testing"

func TestResolve(t *testing.T) {
	tests := []struct{ path, want string }{
		{"/", "./"},
		{"/web/app.wasm", "web/app.wasm"},
		{"/app-worker.js", "app-worker.js"},
		{"web/app.wasm", "web/app.wasm"}, // go-app may resolve what was resolved before
		{"https://example.org/a.png", "https://example.org/a.png"},
	}
	for _, tt := range tests {
		if got := (resolver{}).Resolve(tt.path); got != tt.want {
			t.Errorf("Resolve(%q) = %q, want %q", tt.path, got, tt.want)
		}
	}
}
