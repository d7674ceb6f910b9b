package main

// head is how a compiled function begins that calls or jumps: with blocks within one another, at
// the end of each of which it can go on, and a table that leaves as many of them as a place asks for.
type head struct {
	exit, loop bool  // around the blocks: one that is left with the stack unwound, one to which jumps go
	blocks     int64 // how many others there are
	table      []uint64
	length     int // of the head, in instructions
}

// bodyAt is where a function's head begins: behind what copies the stack pointer.
const bodyAt = 2

// head returns how a function begins; false where it does so in no way that is known.
func (f function) head() (h head, ok bool) {
	at := bodyAt
	for at < len(f.code) && (f.code[at].is(block, noResult) || f.code[at].is(loop, noResult)) {
		at++
	}
	if !f.has(at, getLocal, branchTable) || f.code[at].arg != placeLocal {
		return head{}, false
	}
	h.table, h.length = f.code[at+1].targets, at+2
	h.blocks = int64(h.table[len(h.table)-1]) + 1
	around := int64(at-bodyAt) - h.blocks
	h.loop = around > 0 && f.code[bodyAt+around-1].op == loop
	h.exit = around > 0 && f.code[bodyAt].op == block
	return h, around == count(h.exit)+count(h.loop)
}

// count returns how many of one thing there are.
func count(is bool) int64 {
	if is {
		return 1
	}
	return 0
}

// around returns how many openings stand around the blocks.
func (h head) around() int64 { return count(h.exit) + count(h.loop) }

// opening returns which of all openings of a function, from outside, is the block at whose end a
// place is.
func (h head) opening(place int64) int64 {
	last := int64(len(h.table)) - 1
	if place < 0 || place > last {
		place = last
	}
	return h.around() + h.blocks - 1 - int64(h.table[place])
}
