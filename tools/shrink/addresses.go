package main

// nearest is what no address of a Go program lies below, in bytes: the page there stays empty, for
// nil pointers (wasmMinDataAddr in src/cmd/link/internal/ld/data.go of Go's source).
const nearest = 4096

// foldOffsets puts a constant that is added to a pointer into the offset of the load or store by it,
// as Go's compiler does for whole numbers, not for floats nor on the stack. A pointer plus a constant
// is at least nearest and the constant is no greater, so that neither form runs over 32 bits where
// the other does not.
func (f *function) foldOffsets() {
	var out []instruction
	for i := 0; i < len(f.code); i++ {
		if by, ok := f.folded(i); ok {
			f.code[by] = f.code[by].farther(f.code[i].arg)
			i += 2 // the constant and the addition
		}
		// A number of 32 bits that is made one of 64 and cut again.
		if n := len(out); f.code[i].op == wrapI64 && n > 0 && out[n-1].op == extendU32 {
			out = out[:n-1]
			continue
		}
		out = append(out, f.code[i])
	}
	f.code = out
}

// folded returns by which load or store the sum is used that begins with a constant.
func (f function) folded(at int) (by int, ok bool) {
	if !f.has(at, constI64, addI64, wrapI64) || f.code[at].arg < 0 {
		return 0, false
	}
	by, ok = f.user(at + 3)
	return by, ok && f.code[at].arg+f.code[by].arg <= nearest
}

// user returns which load or store takes as its address the value that is on the stack before an
// instruction, if one does so before anything can go elsewhere.
func (f function) user(from int) (by int, ok bool) {
	values := 1 // from the address up
	for i := from; i < len(f.code); i++ {
		in := f.code[i]
		takes, leaves, ok := in.effect()
		switch {
		case !ok:
			return 0, false
		case in.isLoad() && values == 1, in.isStore() && values == 2:
			return i, true
		case takes >= values:
			return 0, false
		}
		values += leaves - takes
	}
	return 0, false
}

// joinSteps makes one step of two by which the stack pointer moves on end, as when a function ends.
func (f *function) joinSteps() {
	var out []instruction
	for i := 0; i < len(f.code); i++ {
		for f.stepAt(i) && f.stepAt(i+5) {
			f.code[i+6] = constant(constI32, f.code[i+1].arg+f.code[i+6].arg)
			i += 5
		}
		out = append(out, f.code[i])
	}
	f.code = out
}

// stepAt reports whether the stack pointer is moved up by a constant.
func (f function) stepAt(at int) bool {
	return f.has(at, getLocal, constI32, addI32, teeLocal, setGlobal) && f.code[at].arg == stackLocal &&
		f.code[at+3].arg == stackLocal && f.code[at+4].arg == stackGlobal
}
