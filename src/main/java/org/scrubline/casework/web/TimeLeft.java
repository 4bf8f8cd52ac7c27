package org.scrubline.casework.web;

import java.time.Duration;
import org.scrubline.casework.LateAdmission;
import org.scrubline.casework.OpenSheet;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.Settings;
import org.springframework.stereotype.Component;

/** Says how long a sheet can still be signed in time, and what holds once it cannot. */
@Component
class TimeLeft {

    private final Settings settings;
    private final LateAdmission admission;
    private final SheetWords words;

    TimeLeft(Settings settings, LateAdmission admission, SheetWords words) {
        this.settings = settings;
        this.admission = admission;
        this.words = words;
    }

    /** The sentence; {@code late} when a signature now would be a late entry. */
    record Left(String text, boolean late) {}

    Left of(OpenSheet open) {
        ProgrammeSettings now = settings.of(open.surgicalCase().programmeId());
        Duration age = open.age();
        Duration toLate = now.lateAfter().minus(age);
        Duration toClosed = now.closedAfter().minus(age);
        if (!toLate.isNegative()) {
            return new Left(left("to-score.left", toLate), false);
        }
        if (!toClosed.isNegative()) {
            return new Left(left("to-score.late", toClosed), true);
        }
        String key = admission.released(open.sheetId()) ? "to-score.released" : "to-score.closed";
        return new Left(words.say(key), true);
    }

    private String left(String key, Duration time) {
        return words.say(key, words.length(time));
    }
}
