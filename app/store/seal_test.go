package store

import (
	"errors"
	"testing"
)

// TestSealFindsEveryDamage changes each bit, and cuts at each byte, of a sealed text.
func TestSealFindsEveryDamage(t *testing.T) {
	const body = "a body\nof two lines"
	text := seal("head", body)
	if got, err := unseal("head", text); got != body || err != nil {
		t.Fatalf("unseal = %q, %v, want %q", got, err, body)
	}
	for at := range text {
		if _, err := unseal("head", text[:at]); !errors.Is(err, ErrDamaged) {
			t.Errorf("cut at %d: %v, want %v", at, err, ErrDamaged)
		}
		for bit := range 8 {
			damaged := text[:at] + string([]byte{text[at] ^ 1<<bit}) + text[at+1:]
			if _, err := unseal("head", damaged); !errors.Is(err, ErrDamaged) {
				t.Errorf("bit %d of %d: %v, want %v", bit, at, err, ErrDamaged)
			}
		}
	}
}

func TestUnsealRefusals(t *testing.T) {
	tests := []struct {
		name, text string
		want       error
	}{
		{"newer", sealAs("head", sealVersion+1, "body"), ErrNewer},
		{"of no version", sealAs("head", 0, "body"), ErrDamaged},
		{"of another kind", seal("revision", "body"), ErrDamaged},
		{"empty", "", ErrDamaged},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if _, err := unseal("head", tt.text); !errors.Is(err, tt.want) {
				t.Errorf("unseal = %v, want %v", err, tt.want)
			}
		})
	}
}
