// Package worker is what a worker of the page can do: the calls of the table that the
// page makes, as methods of the bridge. Params are {"study": .., "options": ..}, with the
// study file and the options of the call; the result is that of the call, numbers by the
// ten thousand as bytes. With {"shard": {"index": .., "of": ..}} besides it is what that
// shard of the call finds, with {"parts": [..]} the answer from what all shards found. A
// [Team] is the page's side of that.
package worker
