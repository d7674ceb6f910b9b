package batch

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"toewright/internal/engine"
	"toewright/internal/shards"
)

// invented is a part that states nothing of importance.
func invented() *Part {
	return &Part{
		Format: Format, Version: "v1", Machine: "amd64", Command: "map",
		Study:   StudyID{Name: `quotes " and <signs>`, SHA256: "00"},
		Options: json.RawMessage(`{"rows":3}`), Shard: engine.Shard{Index: 1, Of: 2}, Result: json.RawMessage(`{"cells":[1,null]}`),
	}
}

func TestPartComesBack(t *testing.T) {
	for _, tail := range []string{"", "\n", "\r\n"} {
		data := append(bytes.TrimRight(sealed(t, invented()), "\n"), tail...)
		got, err := decode(data)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(invented(), got); diff != "" {
			t.Errorf("decode(encode(p)) (-want +got):\n%s", diff)
		}
	}
}

// TestPartIsReadableJSON: other programs read a part as they do any JSON.
func TestPartIsReadableJSON(t *testing.T) {
	var got struct {
		Format string `json:"format"`
		SHA256 string `json:"sha256"`
	}
	data := sealed(t, invented())
	if err := json.Unmarshal(data, &got); err != nil || got.Format != Format || len(got.SHA256) != 64 {
		t.Errorf("read as %+v, %v", got, err)
	}
	if n := bytes.Count(data, []byte("\n")); n != 1 {
		t.Errorf("%d lines, want 1", n)
	}
}

// TestPartDamagedAnywhere: cut at any byte, or with any byte changed, a part is
// refused.
func TestPartDamagedAnywhere(t *testing.T) {
	data := bytes.TrimRight(sealed(t, invented()), "\n")
	for i := range data {
		if _, err := decode(data[:i]); err == nil {
			t.Errorf("accepted when cut at byte %d", i)
		}
		spoiled := bytes.Clone(data)
		spoiled[i] ^= 1
		if _, err := decode(spoiled); err == nil {
			t.Errorf("accepted with byte %d, %q, changed", i, data[i])
		}
	}
}

func TestPartRefused(t *testing.T) {
	for _, tt := range []struct {
		name  string
		spoil func(*Part)
		part  string // of the error
	}{
		{"a newer format", func(p *Part) { p.Format = "toewright-part/2" }, `has the format "toewright-part/2", this version reads "toewright-part/1"`},
		{"a study", func(p *Part) { p.Format = "toewright/1" }, `has the format "toewright/1"`},
		{"a shard below", func(p *Part) { p.Shard.Index = -1 }, "shard -1/2, which there is not"},
		{"a shard above", func(p *Part) { p.Shard.Index = 2 }, "shard 2/2, which there is not"},
		{"of no shards", func(p *Part) { p.Shard = engine.Shard{} }, "shard 0/0, which there is not"},
		{"of too many", func(p *Part) { p.Shard.Of = maxShards + 1 }, "shard 1/1000001, which there is not"},
	} {
		p := invented()
		tt.spoil(p)
		_, err := decode(sealed(t, p))
		wantError(t, tt.name, err, tt.part)
	}
}

func TestPartOfOtherText(t *testing.T) {
	data := string(sealed(t, invented()))
	for _, tt := range []struct{ name, text, part string }{
		{"empty", "", shards.ErrCut.Error()},
		{"the study", saloon, shards.ErrCut.Error()},
		{"twice", data + data, errChanged.Error()},
		{"laid out anew", strings.Replace(data, `"version":"v1"`, `"version": "v1"`, 1), errChanged.Error()},
	} {
		_, err := decode([]byte(tt.text))
		wantError(t, tt.name, err, tt.part)
	}
}

// FuzzDecode: what is accepted is written again to the same bytes but for blanks
// at the end.
func FuzzDecode(f *testing.F) {
	data := sealed(f, invented())
	f.Add(data)
	f.Add(data[:len(data)/2])
	f.Add([]byte(sealOpen + strings.Repeat("0", 64) + sealClose))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := decode(data)
		if err != nil {
			return
		}
		again, err := encode(p)
		if err != nil {
			t.Fatal(err)
		}
		if q, err := decode(again); err != nil || !cmp.Equal(p, q) {
			t.Errorf("%q: written anew as %q, %v", data, again, err)
		}
	})
}
