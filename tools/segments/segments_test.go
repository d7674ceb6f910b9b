package main

import (
	"bytes"
	"errors"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// memory returns what segments put into memory.
func memory(segments []segment) []byte {
	var m []byte
	for _, s := range segments {
		if more := int(s.end()) - len(m); more > 0 {
			m = append(m, make([]byte, more)...)
		}
		copy(m[s.offset:], s.data)
	}
	return m
}

// programOf returns a program of a section of code, the data and a custom section.
func programOf(data []byte) []byte {
	p := append(bytes.Clone(header), 10, 2, 7, 7)
	p = append(p, dataSection)
	p = appendUnsigned(p, uint64(len(data)))
	p = append(p, data...)
	return append(p, 0, 3, 1, 2, 3)
}

func TestJoin(t *testing.T) {
	long := strings.Repeat("a", 200)
	for _, tt := range []struct {
		name      string
		have, was []segment
	}{
		{"none", nil, nil},
		{"close", []segment{{8, []byte("ab")}, {12, []byte("c")}}, []segment{{8, []byte("ab\x00\x00c")}}},
		{"touching", []segment{{8, []byte("ab")}, {10, []byte("c")}}, []segment{{8, []byte("abc")}}},
		{"far", []segment{{8, []byte("ab")}, {13, []byte("c")}}, []segment{{8, []byte("ab")}, {13, []byte("c")}}},
		{"overlapping, of which the later holds", []segment{{9, []byte("x")}, {8, []byte("abc")}}, []segment{{9, []byte("x")}, {8, []byte("abc")}}},
		{"backwards", []segment{{8, []byte("a")}, {6, []byte("b")}}, []segment{{6, []byte("b\x00a")}}},
		{"of long ones", []segment{{70000, []byte(long)}, {70201, []byte(long)}}, []segment{{70000, []byte(long + "\x00" + long)}}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got, err := joinData(programOf(appendSegments(nil, tt.have)), 2)
			if err != nil {
				t.Fatal(err)
			}
			if want := programOf(appendSegments(nil, tt.was)); !bytes.Equal(got, want) {
				t.Errorf("the program became\n%x, want\n%x", got, want)
			}
		})
	}
}

func TestJoinKeepsTheMemory(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one := rapid.Custom(func(t *rapid.T) segment {
			return segment{int64(rapid.IntRange(0, 300).Draw(t, "offset")), rapid.SliceOfN(rapid.Byte(), 0, 40).Draw(t, "data")}
		})
		before := rapid.SliceOfN(one, 0, 20).Draw(t, "segments")
		joined, err := joinData(programOf(appendSegments(nil, before)), rapid.IntRange(0, 50).Draw(t, "gap"))
		if err != nil {
			t.Fatal(err)
		}
		r := reader{data: joined[len(header)+4:]}
		r.byte()
		after, err := readSegments(r.bytes(r.unsigned()))
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(memory(before), memory(after)); d != "" {
			t.Errorf("the memory differs (-before +after):\n%s", d)
		}
	})
}

func TestSigned(t *testing.T) {
	for _, x := range []int64{0, 1, -1, 63, 64, -64, -65, 127, 128, 8191, 8192, -8192, -8193, math.MaxInt32, math.MinInt32, math.MaxInt64, math.MinInt64} {
		r := reader{data: append(appendSigned(nil, x), 9)}
		if got := r.signed(); got != x || r.err != nil || len(r.data) != 1 {
			t.Errorf("%d became %d with %d bytes left (%v)", x, got, len(r.data), r.err)
		}
	}
	// The examples of the format's own description, and of DWARF's, which it names.
	for x, want := range map[int64]string{2: "\x02", -2: "\x7e", 128: "\x80\x01", -129: "\xff\x7e", -123456: "\xc0\xbb\x78"} {
		if got := string(appendSigned(nil, x)); got != want {
			t.Errorf("%d is %x, want %x", x, got, want)
		}
	}
}

func TestDamagedPrograms(t *testing.T) {
	whole := programOf(appendSegments(nil, []segment{{8, []byte("ab")}}))
	data := bytes.IndexByte(whole, dataSection)
	change := func(at int, b byte) []byte {
		p := bytes.Clone(whole)
		p[at] = b
		return p
	}
	for _, tt := range []struct {
		name    string
		program []byte
		want    string
	}{
		{"nothing", nil, "no WebAssembly program"},
		{"another version", change(4, 2), "no WebAssembly program"},
		{"cut off in a section", whole[:len(whole)-1], "the section at byte"},
		{"cut off in a length", whole[:len(header)+1], "the section at byte 8: unexpected EOF"},
		{"a length without end", append(bytes.Clone(header), append([]byte{10}, bytes.Repeat([]byte{0xff}, 11)...)...), "longer than the format allows"},
		{"a passive segment", change(data+3, 1), "segment 0 is not of the kind"},
		{"an offset that is computed", change(data+4, 0x23), "segment 0 is not of the kind"},
		{"too few segments", change(data+2, 0), "bytes are left behind"},
		{"too many segments", change(data+2, 2), "the data section: unexpected EOF"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := joinData(tt.program, gap)
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("error %v, want one with %q", err, tt.want)
			}
		})
	}
}

// TestRealProgram joins the segments of a program that Go has built, and runs it where
// there is node.
func TestRealProgram(t *testing.T) {
	dir := t.TempDir()
	source, linked, joined := filepath.Join(dir, "main.go"), filepath.Join(dir, "linked.wasm"), filepath.Join(dir, "joined.wasm")
	const text = "package main\n\nfunc main() { println(\"the program runs\") }\n"
	if err := os.WriteFile(source, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	build := exec.Command("go", "build", "-o", linked, source)
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("go build: %v: %s", err, out)
	}
	if err := rewrite(joined, linked); err != nil {
		t.Fatal(err)
	}
	before, after := segmentsOf(t, linked), segmentsOf(t, joined)
	if len(after)*10 > len(before) {
		t.Errorf("%d segments became %d, want a tenth at most", len(before), len(after))
	}
	if !bytes.Equal(memory(before), memory(after)) {
		t.Error("the memory differs")
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command("node", filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec_node.js"), joined)
	out, err := run.CombinedOutput()
	if errors.Is(err, exec.ErrNotFound) {
		t.Log("not run: there is no node") // The tests of the page run a joined program too.
	} else if err != nil || !strings.Contains(string(out), "the program runs") {
		t.Errorf("node: %v: %s", err, out)
	}
}

// segmentsOf returns the segments of a program's file.
func segmentsOf(t *testing.T, file string) []segment {
	t.Helper()
	program, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	r := reader{data: program[len(header):]}
	for len(r.data) > 0 {
		number := r.byte()
		content := r.bytes(r.unsigned())
		if number != dataSection {
			continue
		}
		segments, err := readSegments(content)
		if err != nil {
			t.Fatal(err)
		}
		return segments
	}
	t.Fatal("no data section")
	return nil
}
