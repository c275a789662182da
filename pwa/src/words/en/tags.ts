// The words of the tags on wheels.

export const tagWords = {
  "tags.title": "Wheel tags",
  "tags.code": "Code on a tag",
  "tags.open": "Open the wheel",
  "tags.unknown": "No wheel of this book has the code {code}.",
  "tags.several": "Several wheels have this code. Which one is it?",
  "tags.camera": "Read it with the camera",
  "tags.cameraNone": "The camera gave no picture. Type the code.",
  "tags.stop": "Stop the camera",
  "tags.print": "Print, cut out and tie to the wheels. A phone’s camera opens the wheel from the square; the code can be typed.",
  "tags.only": "Spares only",
  "tags.spoken": "Square code that opens {name}",
  "tags.none": "There is no wheel in the book yet.",
  "tags.progress": "Drawing {done} of {of}",
} as const;
