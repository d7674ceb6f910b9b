package main

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
)

// Instructions that the tests are written with.
var (
	stackPointer = []instruction{numbered(getGlobal, stackGlobal), numbered(setLocal, stackLocal)}
	getStack     = numbered(getLocal, stackLocal)
	finish       = []instruction{plain(unreachable), plain(end)}
)

// access returns a load or store of eight bytes at an offset.
func access(op byte, offset int64) instruction {
	return instruction{op: op, arg: offset, text: appendUnsigned([]byte{op, 3}, uint64(offset))}
}

// table returns a table of branches, as a head has it behind the place.
func tableOf(targets ...uint64) []instruction {
	text := appendUnsigned([]byte{branchTable}, uint64(len(targets)-1))
	for _, t := range targets {
		text = appendUnsigned(text, t)
	}
	return []instruction{numbered(getLocal, placeLocal), {op: branchTable, targets: targets, text: text}}
}

// jumpTo returns a jump as Go's assembler writes it: to a place by the loop at a depth.
func jumpTo(place, depth int64) []instruction {
	return []instruction{constant(constI32, place), numbered(setLocal, placeLocal), numbered(branch, depth)}
}

// code joins instructions and lists of them.
func code(parts ...any) []instruction {
	var all []instruction
	for _, p := range parts {
		switch p := p.(type) {
		case instruction:
			all = append(all, p)
		case []instruction:
			all = append(all, p...)
		}
	}
	return all
}

// rewritten returns the text of a compiled function, read as it stands in a program and made simpler.
func rewritten(t *testing.T, body []instruction) []byte {
	t.Helper()
	content := appendUnsigned(nil, 1)
	text := function{locals: []locals{{1, typeI32}, {1, typeI64}}, code: body}.append(nil)
	content = append(appendUnsigned(content, uint64(len(text))), text...)
	out, err := simplify(content)
	if err != nil {
		t.Fatal(err)
	}
	r := reader{data: out}
	r.unsigned()
	return r.bytes(r.unsigned())
}

// listed returns the instructions of a function's text, one a line.
func listed(t *testing.T, text []byte) string {
	t.Helper()
	f, err := readFunction(text, 0)
	if err != nil {
		t.Fatal(err)
	}
	var lines strings.Builder
	fmt.Fprintln(&lines, f.locals)
	for _, in := range f.code {
		fmt.Fprintf(&lines, "%x\n", in.text)
	}
	return lines.String()
}

func TestSimplify(t *testing.T) {
	var (
		b, l, iff = opening(block), opening(loop), opening(ifTrue)
		e         = plain(end)
		work      = plain(1) // an instruction that does nothing
		truth     = getStack
		add8      = []instruction{constant(constI64, 8), plain(addI64), plain(wrapI64)}
		address   = constant(constI64, firstNumber<<16|3)
		five      = constant(constI64, 5)
		register  = numbered(getLocal, firstRegister)
		up        = func(n int64) []instruction {
			return []instruction{getStack, constant(constI32, n), plain(addI32), numbered(teeLocal, stackLocal), numbered(setGlobal, stackGlobal)}
		}
		unwound     = []instruction{iff, constant(constI32, 1), plain(returnNow), e}
		callOther   = []instruction{constant(constI32, 0), numbered(call, 7)}
		callScratch = []instruction{numbered(setLocal, placeLocal), constant(constI32, 0), numbered(getLocal, placeLocal), {op: callIndirect, text: []byte{callIndirect, 0, 0}}}
	)
	for _, tt := range []struct {
		name       string
		have, want []instruction // behind what copies the stack pointer; the same where want is nil
	}{
		{"a jump down",
			code(l, b, b, b, tableOf(0, 1, 2), e, work, jumpTo(2, 2), e, work, e, e, finish),
			code(b, b, b, tableOf(0, 1, 2), e, work, numbered(branch, 1), e, work, e, finish)},
		{"a jump down on a condition",
			code(l, b, b, b, tableOf(0, 1, 2), e, truth, iff, jumpTo(2, 3), e, work, e, work, e, e, finish),
			code(b, b, b, tableOf(0, 1, 2), e, truth, numbered(branchIf, 1), work, e, work, e, finish)},
		{"a jump down on a condition and another thing with it",
			code(l, b, b, b, tableOf(0, 1, 2), e, truth, iff, work, jumpTo(1, 3), e, e, work, e, e, finish),
			code(b, b, b, tableOf(0, 1, 2), e, truth, iff, work, numbered(branch, 1), e, e, work, e, finish)},
		{"a jump back, whose loop stays",
			code(l, b, b, b, tableOf(0, 1, 2), e, work, e, work, truth, iff, jumpTo(1, 2), e, jumpTo(2, 1), e, e, finish),
			code(l, b, b, b, tableOf(0, 1, 2), e, work, e, work, truth, iff, jumpTo(1, 2), e, numbered(branch, 0), e, e, finish)},
		{"a jump back from within others, as many as blocks were left",
			code(l, b, b, b, tableOf(0, 1, 2), e, e, truth, iff, truth, iff, jumpTo(0, 3), e, e, e, e, finish), nil},
		{"a place that the table has by its last entry",
			code(l, b, b, tableOf(0, 1), e, work, jumpTo(9, 1), e, e, finish),
			code(b, b, tableOf(0, 1), e, work, numbered(branch, 0), e, finish)},
		{"the stack unwound",
			code(b, l, b, b, tableOf(0, 1), e, callOther, numbered(branchIf, 2), jumpTo(1, 1), e, e, finish, constant(constI32, 1), e),
			code(b, b, tableOf(0, 1), e, callOther, unwound, numbered(branch, 0), e, finish)},
		{"the stack unwound without a loop",
			code(b, b, b, tableOf(0, 1), e, callOther, numbered(branchIf, 1), e, finish, constant(constI32, 1), e),
			code(b, b, tableOf(0, 1), e, callOther, unwound, e, finish)},
		{"a branch within the blocks",
			code(b, b, tableOf(0, 1), e, b, truth, numbered(branchIf, 0), e, e, finish), nil},
		{"a branch to the loop that is no jump",
			code(l, b, b, tableOf(0, 1), e, jumpTo(1, 1), truth, numbered(branchIf, 1), e, e, finish), nil},
		{"a place that is read",
			code(l, b, b, tableOf(0, 1), e, numbered(getLocal, placeLocal), plain(0x1a), jumpTo(1, 1), e, e, finish), nil},
		{"a place that is read for what was put there",
			code(l, b, b, tableOf(0, 1), e, constant(constI32, 3), callScratch, plain(0x1a), jumpTo(1, 1), e, e, finish),
			code(b, b, tableOf(0, 1), e, constant(constI32, 3), callScratch, plain(0x1a), numbered(branch, 0), e, finish)},
		{"a table of another kind",
			code(l, b, b, tableOf(0, 1), e, jumpTo(1, 1), b, tableOf(0, 0), e, e, e, finish), nil},
		{"a number loaded from the stack",
			code(getStack, plain(extendU32), add8, access(loadI32+1, 16), finish),
			code(getStack, access(loadI32+1, 24), finish)},
		{"a number loaded by a pointer and stored at another",
			code(register, add8, getStack, plain(extendU32), add8, access(loadI32+1, 0), access(storeI64, 1), finish),
			code(register, plain(wrapI64), getStack, access(loadI32+1, 8), access(storeI64, 9), finish)},
		{"a number stored at a pointer",
			code(register, add8, register, five, plain(addI64), access(storeI64, 1), finish),
			code(register, plain(wrapI64), register, five, plain(addI64), access(storeI64, 9), finish)},
		{"a pointer that is stored", code(getStack, register, add8, access(storeI64, 0), finish), nil},
		{"a pointer that is used behind a call", code(register, add8, callOther, access(storeI64, 0), finish), nil},
		{"a constant below zero", code(register, constant(constI64, -8), plain(addI64), plain(wrapI64), access(loadI32, 16), finish), nil},
		{"a constant beyond the empty page", code(register, constant(constI64, 4000), plain(addI64), plain(wrapI64), access(loadI32, 97), finish), nil},
		{"steps of the stack pointer",
			code(up(40), up(8), up(8), getStack, finish),
			code(up(56), getStack, finish)},
		{"an address to return to, once", code(getStack, address, access(storeI64, 0), finish), nil},
		{"numbers like addresses of another function",
			code(getStack, constant(constI64, 1<<16), access(storeI64, 0), getStack, constant(constI64, 1<<16), access(storeI64, 0), finish), nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			want := tt.want
			if want == nil {
				want = tt.have
			}
			text := function{locals: []locals{{1, typeI32}, {1, typeI64}}, code: code(stackPointer, want)}.append(nil)
			if got := rewritten(t, code(stackPointer, tt.have)); !bytes.Equal(got, text) {
				t.Errorf("the function became\n%swant\n%s", listed(t, got), listed(t, text))
			}
		})
	}
}

func TestSharedNumber(t *testing.T) {
	getRegister, setRegister := numbered(getLocal, firstRegister), numbered(setLocal, firstRegister+1)
	address := func(place int64) []instruction {
		return []instruction{getStack, constant(constI64, firstNumber<<16|place), access(storeI64, 0)}
	}
	joined := func(place int64) []instruction {
		return []instruction{getStack, getRegister, constant(constI64, place), plain(orI64), access(storeI64, 0)}
	}
	body := code(stackPointer, address(1), getRegister, setRegister, address(300), getStack, finish)
	number := []instruction{constant(constI64, firstNumber<<16), numbered(setLocal, firstRegister)}
	want := code(number, stackPointer, joined(1), numbered(getLocal, firstRegister+1), numbered(setLocal, firstRegister+2), joined(300), getStack, finish)
	for _, tt := range []struct{ have, want []locals }{
		{[]locals{{1, typeI32}, {2, typeI64}}, []locals{{1, typeI32}, {3, typeI64}}},
		{[]locals{{1, typeI32}, {2, 0x7c}}, []locals{{1, typeI32}, {1, typeI64}, {2, 0x7c}}},
		{[]locals{{1, typeI32}}, []locals{{1, typeI32}, {1, typeI64}}},
	} {
		f := function{number: firstNumber, locals: tt.have, code: body}
		f.simplify()
		got, text := f.append(nil), function{locals: tt.want, code: want}.append(nil)
		if !bytes.Equal(got, text) {
			t.Errorf("with the locals %v the function became\n%swant\n%s", tt.have, listed(t, got), listed(t, text))
		}
	}
}

func TestDamagedCode(t *testing.T) {
	for _, tt := range []struct {
		name string
		text []byte // of the one function
		more []byte // behind it
		want string
	}{
		{"nothing", nil, nil, "function 0: unexpected EOF"},
		{"no end", []byte{0, 1}, nil, "function 0: a function does not end with end"},
		{"an instruction that Go does not write", []byte{0, 0xd0, 0x0b}, nil, "function 0: instruction 0xd0 is not one"},
		{"one of the extended ones", []byte{0, 0xfc, 12, 0x0b}, nil, "function 0: instruction 0xfc 12 is not one"},
		{"a table longer than the function", []byte{0, branchTable, 0xff, 0xff, 0x7f, 0x0b}, nil, "function 0: unexpected EOF"},
		{"cut off in a constant", []byte{0, constF64, 1, 2}, nil, "function 0: unexpected EOF"},
		{"bytes behind", []byte{0, 0x0b}, []byte{1}, "bytes are left behind the last function"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			content := append(appendUnsigned([]byte{1}, uint64(len(tt.text))), tt.text...)
			_, err := simplify(append(content, tt.more...))
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("error %v, want one with %q", err, tt.want)
			}
		})
	}
	if _, err := simplify([]byte{1, 9, 0}); err == nil {
		t.Error("a function longer than the section was read")
	}
}
