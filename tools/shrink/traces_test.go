package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// source is a program that unwinds its stack, collects garbage meanwhile, calls a method of
// nothing and says where it was.
const source = `package main

import "runtime"

type tree struct{ left, right *tree }

func grow(n int) *tree {
	if n == 0 {
		runtime.GC()
		panic("at the bottom")
	}
	return &tree{left: grow(n - 1), right: &tree{}}
}

func try() (said any) {
	defer func() { said = recover() }()
	grow(50)
	return nil
}

type shape interface{ area() int }

type square struct{ side int }

func (s square) area() int { return s.side * s.side }

var shapes = []shape{(*square)(nil), square{}}

func nothing() (said any) {
	defer func() { said = recover() }()
	return shapes[0].area()
}

func main() {
	println("recovered:", try().(string))
	println("of nothing:", nothing().(error).Error())
	pc, file, line, ok := runtime.Caller(0)
	println("called:", runtime.FuncForPC(pc).Name(), file, line, ok)
	grow(2)
}
`

// build returns the file of a program that Go has built from a source.
func build(t *testing.T, source string) string {
	t.Helper()
	dir := t.TempDir()
	text, linked := filepath.Join(dir, "main.go"), filepath.Join(dir, "linked.wasm")
	if err := os.WriteFile(text, []byte(source), 0o666); err != nil {
		t.Fatal(err)
	}
	build := exec.Command("go", "build", "-o", linked, text)
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("go build: %v: %s", err, out)
	}
	return linked
}

// TestRealProgram makes a program smaller that Go has built, and runs it where there is node.
func TestRealProgram(t *testing.T) {
	linked := build(t, source)
	smaller := filepath.Join(filepath.Dir(linked), "smaller.wasm")
	if err := run(smaller, linked); err != nil {
		t.Fatal(err)
	}
	before, after := sectionOf(t, linked, dataSection), sectionOf(t, smaller, dataSection)
	if many, few := segmentsIn(before), segmentsIn(after); few*10 > many {
		t.Errorf("%d segments became %d, want a tenth at most", many, few)
	}
	if !strings.Contains(string(before), "runtime/panic.go") || strings.Contains(string(after), "runtime/panic.go") {
		t.Error("want the name of a file in what was linked, and none in what became of it")
	}
	out := said(t, smaller)
	if out == "" {
		return
	}
	contains(t, out, "recovered: at the bottom\n", "of nothing: value method ?.?.? called using nil *? pointer\n", "called:  ? 0 true\n", "goroutine 1", "pc=0x")
	if strings.Contains(out, "main.grow") {
		t.Errorf("the program knows the names of its functions:\n%s", out)
	}
	var described strings.Builder
	if err := describe(&described, strings.NewReader(out), memoryOf(t, linked)); err != nil {
		t.Fatal(err)
	}
	contains(t, described.String(), "goroutine 1", "\nmain.grow", "main.go:10\n", "main.go:12\n", "\nmain.main", "main.go:39\n")
}

// contains wants texts in what was said.
func contains(t *testing.T, said string, want ...string) {
	t.Helper()
	for _, w := range want {
		if !strings.Contains(said, w) {
			t.Errorf("want %q in what was said:\n%s", w, said)
		}
	}
}

// said returns what a program says under node; nothing where there is no node: the tests of the
// page run a program that was made smaller too.
func said(t *testing.T, program string) string {
	t.Helper()
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	node := exec.Command("node", filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec_node.js"), program)
	node.Env = append(os.Environ(), "GOTRACEBACK=system")
	out, err := node.CombinedOutput()
	if errors.Is(err, exec.ErrNotFound) {
		t.Log("not run: there is no node")
		return ""
	}
	if exit := (*exec.ExitError)(nil); err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return string(out)
}

// TestOtherTables refuses a memory whose table of functions is not as it is known to be.
func TestOtherTables(t *testing.T) {
	memory := memoryOf(t, build(t, source))
	at := bytes.Index(memory, tableMagic)
	for _, tt := range []struct {
		name string
		edit func(m []byte)
	}{
		{"none", func(m []byte) { m[at]++ }},
		{"two", func(m []byte) { copy(m[at+headerSize:], tableMagic) }},
		{"no functions", func(m []byte) { clear(m[at+8 : at+16]) }},
		{"parts in another order", func(m []byte) { binary.LittleEndian.PutUint64(m[at+40:], 1<<40) }},
		{"a function outside of it", func(m []byte) {
			functions := at + int(binary.LittleEndian.Uint64(m[at+64:]))
			binary.LittleEndian.PutUint32(m[functions+4:], 1<<31)
		}},
		{"a name outside of it", func(m []byte) {
			functions := at + int(binary.LittleEndian.Uint64(m[at+64:]))
			first := functions + int(field(m[functions:], 4))
			setField(m[first:], nameField, 1<<31)
		}},
		{"more facts than there are bytes", func(m []byte) {
			functions := at + int(binary.LittleEndian.Uint64(m[at+64:]))
			first := functions + int(field(m[functions:], 4))
			setField(m[first:], countersField, 1<<31)
		}},
		{"facts behind its end", func(m []byte) {
			parts := bytes.Index(m, binary.LittleEndian.AppendUint64(binary.LittleEndian.AppendUint64(nil, uint64(at)), uint64(at)+headerSize))
			copy(m[parts+8*factsWord:], m[parts+8*endWord:][:8])
			m[parts+8*factsWord]++
		}},
		{"a counter outside of it", func(m []byte) {
			functions := at + int(binary.LittleEndian.Uint64(m[at+64:]))
			first := functions + int(field(m[functions:], 4))
			binary.LittleEndian.PutUint32(m[first+stackField:], 1<<31)
		}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			m := bytes.Clone(memory)
			tt.edit(m)
			if err := dropTraces(m); !errors.Is(err, errTable) {
				t.Errorf("error %v, want that the table is another one", err)
			}
		})
	}
}

// sectionOf returns the content of a section of a program's file.
func sectionOf(t *testing.T, file string, number byte) (content []byte) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	p, err := readProgram(text)
	if err != nil {
		t.Fatal(err)
	}
	p.edit(number, func(found []byte) ([]byte, error) {
		content = found
		return found, nil
	})
	if content == nil {
		t.Fatalf("no section %d", number)
	}
	return content
}

// memoryOf returns the memory that a program's file begins with.
func memoryOf(t *testing.T, file string) []byte {
	t.Helper()
	memory, err := readMemory(sectionOf(t, file, dataSection))
	if err != nil {
		t.Fatal(err)
	}
	return memory
}

// segmentsIn returns of how many segments a data section is.
func segmentsIn(content []byte) uint64 { return (&reader{data: content}).unsigned() }
