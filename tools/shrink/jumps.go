package main

import "slices"

// simplifyJumps has a function go straight to where it goes on. Go's assembler writes each jump as
// one to the loop around all of the function, whose table then leaves the right block. Further down
// the block can be left at once. A loop to which nothing goes back is dropped, and so is the block that is
// left where the stack is being unwound: the depth of that branch, another at each call, becomes a return.
func (f *function) simplifyJumps() {
	h, ok := f.head()
	if !ok {
		return
	}
	j := jumps{head: h, code: f.code, left: h.around() + h.blocks}
	for j.at = h.length; j.at < len(j.code); j.at++ {
		if !j.next() {
			return
		}
	}
	f.code = j.result()
}

// jumps is the state of one function's rewriting.
type jumps struct {
	head
	code    []instruction
	at      int
	out     []instruction // behind the head
	left    int64         // how many of the head's openings are open
	inner   int64         // how many others are open within them
	back    bool          // whether a jump goes back
	loopEnd int           // where the loop ends in out
}

// next rewrites what stands next; false for what is not understood.
func (j *jumps) next() bool {
	in := j.code[j.at]
	if in.op == ifTrue && hasAt(j.code, j.at+4, end) {
		if to, ok := j.jump(j.at+1, 1); ok && to < j.left {
			j.out = append(j.out, numbered(branchIf, j.depth(to)))
			j.at += 4
			return true
		}
	}
	if to, ok := j.jump(j.at, 0); ok {
		if to < j.left {
			j.out = append(j.out, numbered(branch, j.depth(to)))
		} else {
			j.back = true
			j.out = append(j.out, j.code[j.at:j.at+3]...)
		}
		j.at += 2
		return true
	}
	switch in.op {
	case block, loop, ifTrue:
		j.inner++
	case end:
		return j.end()
	case branch, branchIf:
		return j.branch()
	case branchTable:
		return false
	case getLocal, teeLocal:
		if in.arg == placeLocal && !j.scratch() {
			return false
		}
	}
	j.out = append(j.out, in)
	return true
}

// depth returns by what depth a branch names an opening, and the other way round.
func (j *jumps) depth(opening int64) int64 { return j.left + j.inner - 1 - opening }

// jump returns to which opening's end a jump goes that begins at an index, within as many openings
// more as are said; false where none begins.
func (j *jumps) jump(at int, more int64) (to int64, ok bool) {
	if !j.loop || !hasAt(j.code, at, constI32, setLocal, branch) || j.code[at+1].arg != placeLocal ||
		j.depth(j.code[at+2].arg)+more != count(j.exit) {
		return 0, false
	}
	return j.opening(j.code[at].arg), true
}

// branch writes a branch that is no jump. It may go to what is within the blocks; one to what is
// around them must be that which unwinds the stack.
func (j *jumps) branch() bool {
	in := j.code[j.at]
	to := j.depth(in.arg)
	if j.exit && to == 0 && in.op == branchIf {
		j.out = append(j.out, opening(ifTrue), constant(constI32, 1), plain(returnNow), plain(end))
		return true
	}
	j.out = append(j.out, in)
	return to >= j.around()
}

// end writes the end of what was opened last, except of the block that is left to unwind the stack,
// behind which the function returns 1.
func (j *jumps) end() bool {
	if j.inner > 0 {
		j.inner--
		j.out = append(j.out, plain(end))
		return true
	}
	j.left--
	switch {
	case j.loop && j.left == count(j.exit):
		j.loopEnd = len(j.out)
	case j.exit && j.left == 0:
		ok := hasAt(j.code, j.at-1, unreachable, end, constI32, end) && j.at+3 == len(j.code) && j.code[j.at+1].arg == 1
		j.at++
		return ok
	}
	j.out = append(j.out, plain(end))
	return true
}

// scratch reports whether the local of the place is read for what was just put there: the function
// that is called next.
func (j *jumps) scratch() bool {
	return hasAt(j.code, j.at-2, setLocal, constI32, getLocal, callIndirect) && j.code[j.at-2].arg == placeLocal
}

// result returns the function's code, with the head that it still needs.
func (j *jumps) result() []instruction {
	out := slices.Clone(j.code[:bodyAt])
	if j.back {
		out = append(out, opening(loop))
	} else if j.loop {
		j.out = slices.Delete(j.out, j.loopEnd, j.loopEnd+1)
	}
	for range j.blocks {
		out = append(out, opening(block))
	}
	out = append(out, j.code[j.length-2:j.length]...)
	return append(out, j.out...)
}
