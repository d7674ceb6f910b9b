package main

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// segment is what stands in memory from an offset on.
type segment struct {
	offset int
	data   string
}

// contentOf returns a data section's content of segments, as a linker writes it.
func contentOf(segments ...segment) []byte {
	dst := appendUnsigned(nil, uint64(len(segments)))
	for _, s := range segments {
		dst = append(dst, activeSegment, constOpcode)
		dst = appendSigned(dst, int64(s.offset))
		dst = append(dst, endOpcode)
		dst = appendUnsigned(dst, uint64(len(s.data)))
		dst = append(dst, s.data...)
	}
	return dst
}

// programOf returns a program of a section of code, the data and a custom section.
func programOf(data []byte) []byte {
	p := append(bytes.Clone(header), 10, 2, 7, 7)
	p = append(p, dataSection)
	p = appendUnsigned(p, uint64(len(data)))
	p = append(p, data...)
	return append(p, 0, 3, 1, 2, 3)
}

// readAndWritten reads a program and writes it again, its memory in few segments.
func readAndWritten(text []byte) ([]byte, error) {
	p, err := readProgram(text)
	if err == nil {
		err = p.editMemory(func([]byte) error { return nil })
	}
	return p.append(nil), err
}

func TestSegments(t *testing.T) {
	long, far := strings.Repeat("a", 200), strings.Repeat("\x00", gap)
	for _, tt := range []struct {
		name      string
		have, was []segment
	}{
		{"none", nil, nil},
		{"close", []segment{{8, "ab"}, {12, "c"}}, []segment{{8, "ab\x00\x00c"}}},
		{"touching", []segment{{8, "ab"}, {10, "c"}}, []segment{{8, "abc"}}},
		{"as far as it may be", []segment{{8, "ab"}, {10 + gap, "c"}}, []segment{{8, "ab" + far + "c"}}},
		{"farther", []segment{{8, "ab"}, {11 + gap, "c"}}, []segment{{8, "ab"}, {11 + gap, "c"}}},
		{"overlapping, of which the later holds", []segment{{9, "x"}, {8, "abc"}}, []segment{{8, "abc"}}},
		{"backwards", []segment{{8, "a"}, {6, "b"}}, []segment{{6, "b\x00a"}}},
		{"zeros at both ends", []segment{{8, "\x00a\x00"}}, []segment{{9, "a"}}},
		{"of long ones", []segment{{70000, long}, {70201, long}}, []segment{{70000, long + "\x00" + long}}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got, err := readAndWritten(programOf(contentOf(tt.have...)))
			if err != nil {
				t.Fatal(err)
			}
			if want := programOf(contentOf(tt.was...)); !bytes.Equal(got, want) {
				t.Errorf("the program became\n%x, want\n%x", got, want)
			}
		})
	}
}

func TestTheMemoryStays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one := rapid.Custom(func(t *rapid.T) segment {
			return segment{rapid.IntRange(0, 5*gap).Draw(t, "offset"), string(rapid.SliceOfN(rapid.Byte(), 0, 40).Draw(t, "data"))}
		})
		content := contentOf(rapid.SliceOfN(one, 0, 20).Draw(t, "segments")...)
		before, err := readMemory(content)
		if err != nil {
			t.Fatal(err)
		}
		after, err := readMemory(appendMemory(nil, before))
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(bytes.TrimRight(before, "\x00"), after, cmpopts.EquateEmpty()); d != "" {
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
	whole := programOf(contentOf(segment{8, "ab"}))
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
		{"an offset beyond all memory", programOf(contentOf(segment{mostMemory, "a"})), "segment 0 begins at byte 268435456"},
		{"an offset below zero", programOf(contentOf(segment{-1, "a"})), "segment 0 begins at byte -1"},
		{"too few segments", change(data+2, 0), "bytes are left behind"},
		{"too many segments", change(data+2, 2), "the data section: unexpected EOF"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := readAndWritten(tt.program)
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("error %v, want one with %q", err, tt.want)
			}
		})
	}
}
