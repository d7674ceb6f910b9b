package study

import "reflect"

// Clone returns a copy that shares nothing with the document, so that either may
// be changed.
func (d *Document) Clone() *Document {
	c := new(Document)
	deepCopy(reflect.ValueOf(c).Elem(), reflect.ValueOf(d).Elem())
	return c
}

// deepCopy sets dst to a copy of src, which consists of structs, pointers, slices,
// maps with plain values, and plain values; nil stays nil and empty stays empty.
func deepCopy(dst, src reflect.Value) {
	switch src.Kind() {
	case reflect.Pointer:
		if !src.IsNil() {
			dst.Set(reflect.New(src.Type().Elem()))
			deepCopy(dst.Elem(), src.Elem())
		}
	case reflect.Struct:
		for i := range src.NumField() {
			deepCopy(dst.Field(i), src.Field(i))
		}
	case reflect.Slice:
		if !src.IsNil() {
			dst.Set(reflect.MakeSlice(src.Type(), src.Len(), src.Len()))
			for i := range src.Len() {
				deepCopy(dst.Index(i), src.Index(i))
			}
		}
	case reflect.Map:
		if !src.IsNil() {
			dst.Set(reflect.MakeMapWithSize(src.Type(), src.Len()))
			for _, key := range src.MapKeys() {
				dst.SetMapIndex(key, src.MapIndex(key))
			}
		}
	default:
		dst.Set(src)
	}
}
