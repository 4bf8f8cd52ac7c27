package org.scrubline.signoff.web;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.signoff.ContestOutcome;
import org.scrubline.signoff.RecordMarks;
import org.springframework.stereotype.Component;

/** The marks of a record in words. */
@Component
class MarkWords {

    private final RecordWords words;

    MarkWords(RecordWords words) {
        this.words = words;
    }

    List<String> of(RecordMarks marks) {
        List<String> said = new ArrayList<>();
        if (marks.contested()) {
            said.add(words.say("signoff.mark.contested"));
        }
        ContestOutcome outcome = marks.outcome();
        if (!marks.contested() && outcome != null) {
            said.add(words.say("signoff.mark." + outcome));
        }
        if (marks.awaitingCountersignature()) {
            said.add(words.say("signoff.list.awaiting"));
        }
        return said;
    }
}
