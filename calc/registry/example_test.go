package registry_test

import (
	"fmt"

	"rimside/calc/registry"
)

// A request goes in as JSON and comes back as JSON, kilopascals and degrees Celsius on both sides.
func ExampleCall() {
	answer, err := registry.Call("air", []byte(`{"kpa":200,"from":{"c":20,"m":0},"to":{"c":20,"m":0}}`))
	fmt.Println(string(answer), err)
	// Output: {"kpa":200,"ambient_kpa":[101.325,101.325]} <nil>
}

// All that is wrong with a request is told at once, as codes and values.
func ExampleCall_refused() {
	_, err := registry.Call("air", []byte(`{"kpa":9000,"from":{"c":20,"m":0},"to":{"c":20,"M":0}}`))
	for _, each := range err.(*registry.Error).All() {
		fmt.Println(each, each.Values)
	}
	// Output:
	// out_of_bounds kpa map[max:2000 min:-101 unit:kPa]
	// unknown_field to.M map[write:m]
	// missing to.m map[]
}

// The tables tell what a calculation takes, for forms, types and words.
func ExampleContracts() {
	for _, c := range registry.Contracts() {
		if c.Name == "air" {
			for _, row := range registry.Rows(c.Request) {
				fmt.Println(row.Path, row.Kind, !row.Optional)
			}
		}
	}
	// Output:
	// kpa number true
	// from object true
	// from.c number true
	// from.m number true
	// to object true
	// to.c number true
	// to.m number true
}
