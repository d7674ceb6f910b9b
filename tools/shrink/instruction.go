package main

import (
	"fmt"
)

// Instructions by their first byte; see section 5.4 of the WebAssembly Core Specification.
const (
	unreachable   = 0x00
	block         = 0x02
	loop          = 0x03
	ifTrue        = 0x04
	end           = endOpcode
	branch        = 0x0c
	branchIf      = 0x0d
	branchTable   = 0x0e
	returnNow     = 0x0f
	call          = 0x10
	callIndirect  = 0x11
	selectOne     = 0x1b
	getLocal      = 0x20
	setLocal      = 0x21
	teeLocal      = 0x22
	getGlobal     = 0x23
	setGlobal     = 0x24
	loadI32       = 0x28
	loadU8        = 0x2d // i32.load8_u
	lastLoad      = 0x35
	storeI32      = 0x36
	storeI64      = 0x37
	lastStore     = 0x3e
	memorySize    = 0x3f
	memoryGrow    = 0x40
	constI32      = constOpcode
	constI64      = 0x42
	constF32      = 0x43
	constF64      = 0x44
	firstOperator = 0x45
	lessU32       = 0x49
	addI32        = 0x6a
	multiplyI32   = 0x6c
	andI32        = 0x71
	addI64        = 0x7c
	orI64         = 0x84
	wrapI64       = 0xa7 // i32.wrap_i64
	extendU32     = 0xad // i64.extend_i32_u
	lastOperator  = 0xc4
	extended      = 0xfc // a second number says which
	memoryCopy    = 10   // of the extended ones
	memoryFill    = 11
)

// noResult is the type of a block, loop or if that leaves nothing.
const noResult = 0x40

// instruction is an instruction of a function.
type instruction struct {
	op      byte
	arg     int64    // a constant, depth, offset, or number of a local, global or function
	targets []uint64 // depths of a table of branches, the last of which is for all else
	text    []byte   // as it stands in the program
}

// is reports whether an instruction has an operation and an argument.
func (in instruction) is(op byte, arg int64) bool { return in.op == op && in.arg == arg }

// plain returns an instruction without an argument.
func plain(op byte) instruction { return instruction{op: op, text: []byte{op}} }

// constant returns an instruction that pushes a whole number.
func constant(op byte, x int64) instruction {
	return instruction{op: op, arg: x, text: appendSigned([]byte{op}, x)}
}

// numbered returns an instruction for a depth, or the number of a local, global or function.
func numbered(op byte, n int64) instruction {
	return instruction{op: op, arg: n, text: appendUnsigned([]byte{op}, uint64(n))}
}

// accessing returns a load or store at an offset. 1<<align bytes is what the address is a multiple of.
func accessing(op, align byte, offset int64) instruction {
	return instruction{op: op, arg: offset, text: appendUnsigned([]byte{op, align}, uint64(offset))}
}

// opening returns what opens a block that leaves nothing.
func opening(op byte) instruction {
	return instruction{op: op, arg: noResult, text: []byte{op, noResult}}
}

// farther returns a load or store at an offset that is greater by n. Behind its operation stands its
// alignment in one byte.
func (in instruction) farther(n int64) instruction {
	in.arg += n
	in.text = appendUnsigned([]byte{in.op, in.text[1]}, uint64(in.arg))
	return in
}

// isLoad and isStore report whether an instruction reads memory at an address, or writes there.
func (in instruction) isLoad() bool  { return in.op >= loadI32 && in.op <= lastLoad }
func (in instruction) isStore() bool { return in.op >= storeI32 && in.op <= lastStore }

// instruction reads an instruction. One that Go does not write is an error.
func (r *reader) instruction() instruction {
	from := r.data
	in := instruction{op: r.byte()}
	switch op := in.op; {
	case op == block, op == loop, op == ifTrue:
		in.arg = int64(r.byte())
	case op == branch, op == branchIf, op == call, op >= getLocal && op <= setGlobal:
		in.arg = int64(r.unsigned())
	case op == branchTable:
		for n := r.unsigned(); r.err == nil && uint64(len(in.targets)) <= n; {
			in.targets = append(in.targets, r.unsigned())
		}
	case op == callIndirect:
		r.unsigned()
		r.byte()
	case op >= loadI32 && op <= lastStore:
		r.byte()
		in.arg = int64(r.unsigned())
	case op == memorySize, op == memoryGrow:
		r.byte()
	case op == constI32, op == constI64:
		in.arg = r.signed()
	case op == constF32:
		r.bytes(4)
	case op == constF64:
		r.bytes(8)
	case op == extended:
		r.extended()
	case op <= 1, op == 5, op == end, op == returnNow, op == 0x1a, op == selectOne, op >= firstOperator && op <= lastOperator:
	default:
		r.fail(fmt.Errorf("instruction 0x%02x is not one that Go writes", op))
	}
	in.text = from[:len(from)-len(r.data)]
	return in
}

// extended reads the rest of an instruction of the extended ones.
func (r *reader) extended() {
	switch n := r.unsigned(); {
	case n == memoryCopy:
		r.bytes(2)
	case n == memoryFill:
		r.bytes(1)
	case n > 7: // those below convert numbers
		r.fail(fmt.Errorf("instruction 0xfc %d is not one that Go writes", n))
	}
}

// effect returns how many values an instruction takes from the stack and leaves there; false for one
// that may go elsewhere.
func (in instruction) effect() (takes, leaves int, ok bool) {
	switch op := in.op; {
	case op == getLocal, op == getGlobal, op >= constI32 && op <= constF64:
		return 0, 1, true
	case op == setLocal, op == setGlobal:
		return 1, 0, true
	case op == teeLocal, in.isLoad(), unary(op):
		return 1, 1, true
	case in.isStore():
		return 2, 0, true
	case op >= firstOperator && op <= lastOperator:
		return 2, 1, true
	case op == selectOne:
		return 3, 1, true
	}
	return 0, 0, false
}

// unary reports whether an operator takes one value.
func unary(op byte) bool {
	switch {
	case op == 0x45, op == 0x50: // comparisons with zero
	case op >= 0x67 && op <= 0x69, op >= 0x79 && op <= 0x7b: // counts of bits
	case op >= 0x8b && op <= 0x91, op >= 0x99 && op <= 0x9f: // signs, roots and roundings
	case op >= wrapI64 && op <= lastOperator: // conversions
	default:
		return false
	}
	return true
}
