package main

import "slices"

// shareNumber keeps a function's number in a local of its own, from which each address that it is
// to return to is made: the number is then said once, in place of at each call. A browser's compiler
// makes one constant of both again.
func (f *function) shareNumber() {
	addresses := 0
	for i := range f.code {
		addresses += int(count(f.addressAt(i)))
	}
	if addresses < 2 {
		return
	}
	f.addLocal()
	out := []instruction{constant(constI64, f.number<<16), numbered(setLocal, firstRegister)}
	for i, in := range f.code {
		switch {
		case f.addressAt(i):
			out = append(out, numbered(getLocal, firstRegister), constant(constI64, in.arg&0xffff), plain(orI64))
		case in.op >= getLocal && in.op <= teeLocal && in.arg >= firstRegister:
			out = append(out, numbered(in.op, in.arg+1))
		default:
			out = append(out, in)
		}
	}
	f.code = out
}

// addressAt reports whether an address in the function is stored.
func (f function) addressAt(at int) bool {
	return f.has(at, constI64, storeI64) && f.code[at].arg>>16 == f.number
}

// addLocal makes room for a local before the registers, whose numbers grow by one.
func (f *function) addLocal() {
	if len(f.locals) > 1 && f.locals[1].kind == typeI64 {
		f.locals[1].count++
		return
	}
	f.locals = slices.Insert(f.locals, 1, locals{1, typeI64})
}
