package org.scrubline.training.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.scrubline.platform.Wording;
import org.scrubline.training.Exercise;
import org.scrubline.training.TrainingAnswer;
import org.scrubline.training.TrainingEntry;
import org.springframework.stereotype.Component;

/** Says the entries of a training record. */
@Component
class TrainingWords {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);

    private final Wording wording;

    TrainingWords(Wording wording) {
        this.wording = wording;
    }

    String say(String key, Object... arguments) {
        return wording.text(key, arguments);
    }

    String day(LocalDate day) {
        return DAY.format(day);
    }

    private String day(Instant at, ZoneId zone) {
        return day(LocalDate.ofInstant(at, zone));
    }

    /** What it is about; practice with what was practised. */
    String about(TrainingEntry entry) {
        Exercise exercise = entry.exercise();
        String kind = say("training.kind." + entry.kind());
        return exercise == null ? kind : say("training.practice", kind, say("training.exercise." + exercise));
    }

    String author(TrainingEntry entry, ZoneId zone) {
        return say(
                "training.by",
                entry.author().name(),
                say(entry.author().role().messageKey()),
                day(entry.author().at(), zone));
    }

    /** Where practice stands; empty for what needs no answer. */
    String state(TrainingEntry entry, ZoneId zone) {
        TrainingAnswer answer = entry.answer();
        if (answer == null) {
            return entry.waits() ? say("training.waits") : entry.signedOff() ? say("training.seen") : "";
        }
        String key = answer.confirmed() ? "training.confirmed" : "training.not-confirmed";
        return say(key, answer.name(), day(answer.at(), zone), answer.said()).strip();
    }
}
