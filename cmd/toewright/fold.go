package main

import "slices"

// tableWidth is the most characters in a line of a table that folds.
const tableWidth = 112

// fold says how a table too wide for a terminal is set below one another in parts:
// each begins with the same columns. The zero fold keeps a table in one.
type fold struct {
	repeat int // columns that each part begins with
	group  int // columns that stay together
}

// parts returns the numbers of each part's columns: as many groups as tableWidth
// allows, one at least.
func (f fold) parts(widths []int) [][]int {
	if f.group == 0 || lineWidth(widths) <= tableWidth {
		return [][]int{numbers(0, len(widths))}
	}
	var parts [][]int
	head := lineWidth(widths[:f.repeat])
	width := tableWidth + 1 // no part begun
	for c := f.repeat; c < len(widths); c += f.group {
		end := min(c+f.group, len(widths))
		width += len(columnGap) + lineWidth(widths[c:end])
		if width > tableWidth {
			parts = append(parts, numbers(0, f.repeat))
			width = head + len(columnGap) + lineWidth(widths[c:end])
		}
		last := len(parts) - 1
		parts[last] = slices.Concat(parts[last], numbers(c, end))
	}
	return parts
}

// numbers returns the whole numbers from a up to but without b.
func numbers(a, b int) []int {
	var n []int
	for ; a < b; a++ {
		n = append(n, a)
	}
	return n
}

// lineWidth is how many characters columns of these widths take side by side.
func lineWidth(widths []int) int {
	width := len(columnGap) * max(len(widths)-1, 0)
	for _, w := range widths {
		width += w
	}
	return width
}
