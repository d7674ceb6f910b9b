// Package strictjson reads JSON that people write and edit by hand, and refuses
// what it does not understand instead of guessing.
//
// It differs from encoding/json in what a reader of error messages needs: an
// unknown key, a repeated key, a wrong type, a missing value or a number out of
// range is an [*Error] that names the key by its path, gives line and column, and
// suggests the key that was probably meant. Input is bounded in bytes, depth,
// values and magnitude by [Limits], so hostile input costs little.
//
// The way in is [Parse], which gives a [Tree] of [Node] values, then [Tree.Bind],
// which fills Go structs by their json tags and checks their rule tags. The way
// out is [Unbind] and [Format], which print short lists on one line and always
// give the same bytes for the same value.
package strictjson
