package study

import (
	"reflect"
	"testing"

	"toewright/internal/strictjson"
)

// TestArmTexts: the list has every key of an arm that is free text, each once and at its own
// place, and a study with all of them comes back from its file as it was.
func TestArmTexts(t *testing.T) {
	listed := map[string]*ArmText{}
	for i := range ArmTexts {
		listed[ArmTexts[i].Key] = &ArmTexts[i]
	}
	if len(listed) != len(ArmTexts) {
		t.Error("a key stands twice in the list")
	}
	d := Templates()[0].Document()
	d.Arm = &Arm{Projection: FirstAngle}
	v := reflect.ValueOf(d.Arm).Elem()
	for i, f := range strictjson.Fields(v.Type()) {
		if f.Type.Kind() != reflect.String || f.OneOf != nil {
			continue
		}
		text := listed[f.Key]
		if text == nil {
			t.Errorf("arm.%s is not in the list", f.Key)
			continue
		}
		if text.At(d.Arm) != v.Field(i).Addr().Interface() {
			t.Errorf("arm.%s of the list is another", f.Key)
		}
		*text.At(d.Arm) = "its " + f.Key
		delete(listed, f.Key)
	}
	for key := range listed {
		t.Errorf("arm.%s of the list is no key", key)
	}
	file, err := Encode(d)
	if err != nil {
		t.Fatal(err)
	}
	back, err := Decode(file)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(back.Arm, d.Arm) {
		t.Errorf("came back as %+v, was %+v", back.Arm, d.Arm)
	}
}
