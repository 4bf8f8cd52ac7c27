package org.scrubline.signoff.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.scrubline.signoff.SignedContent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.web.RecordPage.Line;
import org.springframework.stereotype.Component;

/** The times of a record, kept apart: end of the case, first score, signature, receipt; and what made it late. */
@Component
class RecordTimesPages {

    private final RecordWords words;

    RecordTimesPages(RecordWords words) {
        this.words = words;
    }

    List<Line> of(SignedSheet signed) {
        SignedContent content = SignedContent.read(signed.content());
        ZoneId zone = signed.signedZone();
        List<Line> lines = new ArrayList<>();
        lines.add(line("ended", words.at(signed.caseEndedAt(), zone)));
        lines.add(line(
                content.device() == null ? "first-scored" : "first-received",
                words.at(content.reviewed().firstScoredAt(), zone)));
        lines.add(line("signed", words.at(signed.signedAt(), zone)));
        lines.add(line("received", words.at(signed.receivedAt(), zone)));
        SignedContent.DeviceTime device = content.device();
        if (device != null) {
            String at = words.at(device.at(), zone);
            lines.add(line("device", device.far() ? words.say("signoff.times.device.far", at) : at));
            if (device.receivedLate()) {
                lines.add(line("received-late", words.say("signoff.times.received-late.said")));
            }
        }
        SignedContent.Release release = content.release();
        if (release != null) {
            lines.add(line("released", released(release)));
        }
        return List.copyOf(lines);
    }

    private String released(SignedContent.Release release) {
        return words.say(
                "signoff.times.released.by",
                release.name(),
                words.say("role." + release.role()),
                words.at(release.at(), release.zone()),
                release.reason());
    }

    private Line line(String key, String text) {
        return new Line(words.say("signoff.times." + key), text);
    }
}
