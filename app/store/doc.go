// Package store keeps studies where the browser keeps things. It works on any
// [Storage] of named texts; in the browser that is localStorage. Browsers write that to
// disk late, so that a [Copy] in IndexedDB, which says when it is on disk, goes with it;
// [Recover] brings back from there what a browser that was killed has lost.
//
// # What is kept
//
// Under the prefix "toewright/":
//
//	study/ID/REVISION.WRITER  a revision of a study; written once, never changed
//	head/ID                   which revision of the study counts, and its name
//	aside/ID.N                a damaged head, put aside when the study was saved again
//	draft/ID                  what is being typed and is no part of the study yet
//	current                   the study that was open last
//	place                     what was looked at last
//	habits                    how the reader works
//
// Every text carries its kind, version and checksum; see [seal]. A save writes a new
// revision and then points the head at it, so that a crash at any moment leaves the
// old or the new one whole. Revisions are counted, not dated: a clock set back does
// no harm. The writer is the tab, so that two tabs that save at once never write the
// same key.
//
// # What is never done
//
// What is damaged, or was written by a newer version, is neither changed nor removed.
// A revision is removed only where at least [History] later ones descend from it, or
// to make room, and never while a head points at it. A revision that no head descends
// from, because two tabs saved at once, is kept until the user discards it.
package store
