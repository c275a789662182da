import { equal, test } from "../../ui/testing.ts";
import { GpxError, type GpxFault, GpxReader } from "./gpx.ts";
import type { Points } from "./points.ts";
import { profileOf } from "./profile.ts";

// What two independent libraries wrote of invented courses, as they wrote it.
const track = `<?xml version="1.0" encoding="UTF-8"?>
<gpx creator="invented" version="1.1" xmlns="http://www.topografix.com/GPX/1/1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://www.topografix.com/GPX/1/1 https://www.topografix.com/GPX/1/1/gpx.xsd">
  <trk>
    <name>A "loop" &gt; B &amp; more</name>
    <trkseg>
      <trkpt lat="46.5" lon="9.8">
        <ele>1800</ele>
      </trkpt>
      <trkpt lat="46.51" lon="9.8">
        <ele>1850.5</ele>
      </trkpt>
      <trkpt lat="46.52" lon="9.81">
        <ele>1990.25</ele>
      </trkpt>
    </trkseg>
    <trkseg>
      <trkpt lat="46.53" lon="9.81">
        <ele>1900</ele>
      </trkpt>
      <trkpt lat="46.54" lon="9.82"></trkpt>
    </trkseg>
  </trk>
  <wpt lat="46" lon="9">
    <ele>500</ele>
  </wpt>
</gpx>`;
const other = `<gpx xmlns="http://www.topografix.com/GPX/1/1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://www.topografix.com/GPX/1/1 http://www.topografix.com/GPX/1/1/gpx.xsd" version="1.1" creator="invented"><metadata/><trk><name>A &lt;loop></name><desc>name=A &lt;loop></desc><trkseg><trkpt lat="46.5" lon="9.8"><ele>1800</ele></trkpt><trkpt lat="46.51" lon="9.8"><ele>1850.5</ele></trkpt><trkpt lat="46.52" lon="9.81"><ele>1990.25</ele></trkpt></trkseg><trkseg><trkpt lat="46.53" lon="9.81"><ele>1900</ele></trkpt><trkpt lat="46.54" lon="9.82"/></trkseg></trk></gpx>`;
// By hand: the older version, and a route.
const older = track.replaceAll("/1/1", "/1/0").replace('version="1.1"', 'version="1.0"').replace(/<metadata>\s*|\s*<\/metadata>/g, "");
const route = `<gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1">
	<rte>
		<name>A route</name>
		<rtept lat="46.5" lon="9.8">
			<ele>1800</ele>
		</rtept>
		<rtept lat="46.51" lon="9.8">
			<ele>1850.5</ele>
		</rtept>
		<rtept lat="46.52" lon="9.81">
			<ele>1990.25</ele>
		</rtept>
	</rte>
</gpx>`;

function readIn(text: string, piece = text.length): Points {
  const reader = new GpxReader();
  for (let at = 0; at < text.length; at += piece) reader.feed(text.slice(at, at + piece));
  return reader.end();
}

function heights(points: Points): readonly (number | string)[] {
  return Array.from({ length: points.count }, (_, n) => (Number.isNaN(points.high(n)) ? "none" : points.high(n)));
}

function faultOf(text: string, piece?: number): GpxFault | "none" {
  try {
    readIn(text, piece);
    return "none";
  } catch (error) {
    if (error instanceof GpxError) return error.fault;
    throw error;
  }
}

// 0.01 degrees of latitude on a sphere of 6371.0088 km are 1111.95 m; the second way runs 0.01 degrees of longitude at 46.515 N besides,
// 765.25 m: 1349.84 m by Pythagoras, which holds to the metre here.
test("gpx: tracks and routes of both versions, in pieces of any size", () => {
  for (const text of [track, other, older]) {
    for (const piece of [1, 2, 7, 64, 1000, text.length]) {
      const points = readIn(text, piece);
      equal(heights(points), [1800, 1850.5, 1990.25, 1900, "none"]);
      equal([1, 2].map((n) => Math.round(points.far(n))), [1112, 2462]);
      equal(Math.round(points.far(3)), 2462, "the way between two parts is not ridden");
    }
  }
  const points = readIn(route, 5);
  equal([heights(points), Math.round(points.length)], [[1800, 1850.5, 1990.25], 2462]);
});

test("gpx: prefixes, comments, quotes and sections are read as they are meant", () => {
  const odd = track.replaceAll(/<(\/?)(gpx|trk|trkseg|trkpt|ele)\b/g, "<$1g:$2").replace("1800", "<![CDATA[1800]]>")
    .replace("<g:trk>", "<!-- <g:trkpt lat='x'> -->\n<g:trk note='a > b'>").replace('lat="46.5"', "lat='46.5'");
  equal(heights(readIn(odd, 3)), [1800, 1850.5, 1990.25, 1900, "none"]);
  equal(heights(readIn(`\uFEFF${track}`)).length, 5);
  equal(heights(readIn(track.replace("<trkpt lat", "<extensions><ele>9</ele></extensions><trkpt lat"))).length, 5);
});

test("gpx: hostile and broken files are refused by name", () => {
  const bomb = `<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>${track}`;
  const cases: readonly (readonly [GpxFault, string])[] = [
    ["entities", bomb], ["entities", track.replace("<trk>", "<!ENTITY x SYSTEM 'file:///'><trk>")],
    ["depth", track.replace("<trk>", "<a>".repeat(40))], ["numbers", track.replace('lat="46.5"', 'lat="96.5"')],
    ["numbers", track.replace('lon="9.8"', 'lon="NaN"')], ["numbers", track.replace('lat="46.5"', "")], ["numbers", track.replace("1850.5", "1e9")],
    ["numbers", track.replace("1850.5", "&x;")], ["numbers", track.replace("1850.5", "0x10")], ["numbers", track.replace("1850.5", "1".repeat(100))],
    ["cut", track.slice(0, track.length / 2)], ["broken", track.replace("</trkseg>", "</trk>")], ["broken", `${track}<gpx></gpx>`], ["broken", `${track.slice(0, track.length / 2)}<${"a".repeat(200_000)}`],
    ["not_gpx", "<html><body></body></html>"], ["not_gpx", "PK\u0003\u0004 not text at all"], ["not_gpx", ""], ["empty", "<gpx></gpx>"],
    ["empty", '<gpx><wpt lat="1" lon="2"/></gpx>'],
  ];
  for (const [want, text] of cases) {
    for (const piece of [17, 4096]) equal(faultOf(text, piece), want, text.slice(0, 90));
  }
});

test("gpx: more points than are taken", () => {
  const reader = new GpxReader();
  reader.feed("<gpx><trk><trkseg>");
  const many = '<trkpt lat="1" lon="2"/>'.repeat(1000);
  let fault = "none";
  try {
    for (let n = 0; n < 501; n++) reader.feed(many);
  } catch (error) {
    fault = error instanceof GpxError ? error.fault : String(error);
  }
  equal(fault, "points");
});

// Whatever is done to a file, it is read or refused: nothing else is thrown, and nothing hangs.
test("gpx: spoilt files are read or refused", () => {
  let seed = 20;
  const draw = (n: number): number => (seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0) % n;
  const bits = ["<", ">", "</", "/>", '"', "'", "<!--", "-->", "<![CDATA[", "]]>", "<?", "?>", "&", "<trkpt", "<ele>", "</gpx>", "\u0000", "é", " lat=", "9".repeat(70)];
  const told = new Set<string>();
  for (let n = 0; n < 3000; n++) {
    let text = [track, route, older][draw(3)] ?? "";
    for (let k = draw(4); k >= 0; k--) {
      const at = draw(text.length);
      text = text.slice(0, at) + (bits[draw(bits.length)] ?? "") + text.slice(at + draw(12));
    }
    const piece = 1 + draw(400);
    const fault = faultOf(text, piece);
    equal(faultOf(text), fault, `pieces of ${piece}: ${text}`);
    told.add(fault);
  }
  equal(told.has("none") && told.has("broken") && told.has("numbers") && told.has("cut"), true, [...told].join());
});

test("profile: a ramp stays a ramp, scatter goes, and the ends keep their height", () => {
  const points = Array.from({ length: 2001 }, (_, n) => `<trkpt lat="${(n * 1e-4).toFixed(6)}" lon="0"><ele>${(1000 + n / 2 + (n % 2 === 0 ? 8 : -8)).toFixed(1)}</ele></trkpt>`);
  const profile = profileOf(readIn(`<gpx><trk><trkseg>${points.join("")}</trkseg></trk></gpx>`, 5000));
  equal(profile.km.toFixed(2), "22.24"); // 0.2 degrees of 111.195 km
  equal(profile.heights.every((m, n) => Math.abs(m - (1000 + (n * profile.step) / 22.239)) < 9), true);
  equal([Math.round(profile.lowest?.km ?? 9), Math.round(profile.highest?.km ?? 0), profile.heights.length], [0, 22, 1001]);
  equal(profileOf(readIn(track.replaceAll(/<ele>.*?<\/ele>/g, ""))).heights, []);
});
