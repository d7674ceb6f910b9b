package engine

// Cautions are the sentences that stand wherever a result is read or printed.
var Cautions = []string{
	"Geometry, not strength: bend, heat, weld or bore no arm on this program's word.",
	"Links are rigid and joints ideal here; rubber bushings add toe change of their own.",
	"Check lock to lock at full bump and droop for binding, contact and thread engagement,",
	"and have the work inspected and aligned by a qualified technician.",
}
