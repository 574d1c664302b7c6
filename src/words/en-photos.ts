/** Words of bringing photographs: why a file is refused, what is odd in its metadata, what is said of a clock. Part of en.ts. */
export const enPhotos = {
  "photo.refused.empty": "The file is empty: it has no bytes.",
  "photo.refused.not-a-photograph": "The file is not a photograph: its content is {found}.",
  "photo.refused.format-not-read": "The picture is {found}, which is not read here. Save it as JPEG, PNG, WebP, HEIC or TIFF.",
  "photo.refused.cut-short": "The {format} file ends before the picture does: it was cut short. Copy it from the card again.",
  "photo.refused.damaged": "The {format} file is damaged and cannot be decoded. Copy it from the card again.",
  "photo.refused.too-many-pixels":
    "The picture is {width} x {height} pixels{pages, plural, one {} other { on # pages}}; at most {megapixels} megapixels and {side} a side are decoded. Save a smaller copy.",
  "photo.refused.too-many-bytes": "The file has {megabytes} MB; at most {most} MB are taken in. Save a smaller copy.",
  "photo.refused.took-too-long": "Decoding the file took more than {seconds} s and was given up.",
  "photo.refused.cannot-be-read": "The file could not be read to its end: {why}.",

  "photo.found.text": "text",
  "photo.found.svg": "an SVG drawing",
  "photo.found.film": "a film",
  "photo.found.pdf": "a PDF document",
  "photo.found.zip": "a ZIP archive",
  "photo.found.raw": "a camera’s raw file",
  "photo.found.gif": "a GIF",
  "photo.found.bmp": "a BMP",
  "photo.found.avif": "an AVIF",
  "photo.found.jxl": "a JPEG XL",
  "photo.found.unknown": "of an unknown kind",

  "photo.note.no-metadata": "The file carries no metadata: no time and no place.",
  "photo.note.metadata-unreadable": "The metadata of the file are damaged and could not be read: no time and no place.",
  "photo.note.no-time": "The file does not say when it was taken.",
  "photo.note.time-blank": "The time {which, select, taken {taken} digitised {digitised} other {changed}} is there but blank.",
  "photo.note.time-impossible": "The time {which, select, taken {taken} digitised {digitised} other {changed}}, “{time}”, does not exist.",
  "photo.note.clock-not-set":
    "The time {which, select, taken {taken} digitised {digitised} other {changed}}, {time}, is what a camera writes before its clock is set.",
  "photo.note.time-in-future": "The time taken, {time}, has not come yet: the camera’s clock is wrong.",
  "photo.note.times-disagree":
    "Its times disagree: {which, select, taken {taken} digitised {digitised} other {changed}} {time}, {other, select, taken {taken} digitised {digitised} other {changed}} {otherTime}; the first is used.",
  "photo.note.offset-impossible": "The offset from UTC, “{offset}”, does not exist.",
  "photo.note.place-without-hemisphere": "The place in the file does not say north or south, east or west, and is not used.",
  "photo.note.place-zero": "The place in the file is 0, 0: the receiver had no fix.",
  "photo.note.place-impossible": "The place in the file is not a place on Earth.",
  "photo.note.orientation-invalid": "The orientation “{orientation}” does not exist; the picture is shown as it is stored.",
  "photo.note.extension": "The name says otherwise, but the content is {format}.",
  "photo.note.pages": "The file has {count} pages; the first is shown.",
  "photo.note.name-cut": "The name was longer than {most} characters and is cut.",

  "photo.folder-unreadable": "The folder “{folder}” cannot be read ({why}). Check the path and whether the card is in.",

  "edit.bring": "Bring {count, plural, one {one photograph} other {# photographs}}",
  "edit.place": "Shift the camera by {seconds} s and place by the stops",

  "clock.behind": "The camera seems {time} behind the phone: {after} of {of} photographs lie at a stop, instead of {before}.",
  "clock.ahead": "The camera seems {time} ahead of the phone: {after} of {of} photographs lie at a stop, instead of {before}.",
  "clock.right": "The camera and the phone agree: {after} of {of} photographs lie at a stop.",
  "clock.hours": "{h} h {min} min {s} s",
  "clock.minutes": "{min} min {s} s",
  "clock.seconds": "{s} s",
  "clock.doubt.too-few-photographs": "Too few photographs with a time to say anything of the camera’s clock.",
  "clock.doubt.too-few-stops": "The photographs fall into one stop at most, which says nothing of the camera’s clock.",
  "clock.doubt.most-lie-between-stops": "Whatever the shift, most photographs lie between the stops.",
  "clock.doubt.several-shifts-fit":
    "Several shifts fit nearly as well and would give other plants. Photograph the phone’s clock, or place some sheets by hand.",
} as const;
