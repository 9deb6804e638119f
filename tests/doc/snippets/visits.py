"""The visits of a calendar's file, read back."""
import icalendar

with open("rosie.ics", "rb") as file:
    for event in icalendar.Calendar.from_ical(file.read()).walk("VEVENT"):
        print(event.decoded("dtstart"), event["summary"])
