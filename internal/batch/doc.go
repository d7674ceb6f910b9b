// Package batch divides the long commands among processes that do not know of one
// another, on one machine or on many, and puts together what they found.
//
// A [Work] is one command on one study. Its shards do disjoint parts of it, each
// writing one [Part]; a [Merge] takes the parts in any order and answers what the
// command would have answered by itself, to the byte: what is added up are counts,
// and choices in an order of their own.
//
// # The file of a part
//
// A part is one JSON document on one line:
//
//	{
//	  "format":  "toewright-part/1",
//	  "version": "v1.2.0",                 of the program that wrote it
//	  "machine": "amd64",                  whose arithmetic it is, to the last digit
//	  "command": "tolerance",              or "choose", "map"
//	  "study":   {"name": "..", "sha256": ".."}   of the study as the program writes it
//	  "options": {"cars": 1000000000},     those given; what is not comes from the study
//	  "shard":   {"index": 3, "of": 100},  index from 0
//	  "result":  {..},                     by the command
//	  "sha256":  ".."                      of the document without this key
//	}
//
// What the results of each command are says package shards.
package batch
