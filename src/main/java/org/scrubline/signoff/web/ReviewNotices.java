package org.scrubline.signoff.web;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.signoff.SigningOutlook.Outlook;
import org.springframework.stereotype.Component;

/** What a signer should know before signing: how late it is, and whether somebody else has to sign too. */
@Component
class ReviewNotices {

    private final RecordWords words;

    ReviewNotices(RecordWords words) {
        this.words = words;
    }

    List<String> of(Outlook outlook) {
        List<String> notices = new ArrayList<>();
        if (outlook.release() != null) {
            notices.add(words.say(
                    "signoff.outlook.released",
                    outlook.release().name(),
                    outlook.release().reason()));
        }
        if (outlook.late()) {
            notices.add(words.say("signoff.outlook.late", outlook.lateAfter().toHours()));
        }
        if (outlook.closesSoon()) {
            notices.add(words.say("signoff.outlook.closes", outlook.hoursLeft()));
        }
        outlook.countersign()
                .forEach(reason -> notices.add(
                        words.say("signoff.outlook.countersign", words.say("signoff.countersign.reason." + reason))));
        return List.copyOf(notices);
    }
}
