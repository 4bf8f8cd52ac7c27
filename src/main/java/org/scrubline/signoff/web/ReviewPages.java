package org.scrubline.signoff.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SheetContent;
import org.scrubline.signoff.SigningPreview;
import org.springframework.stereotype.Component;

/** Makes the review page, and the comparison when what was reviewed is no longer what is stored. */
@Component
class ReviewPages {

    private final RecordPages records;
    private final RecordWords words;
    private final Rubrics rubrics;
    private final Passkeys passkeys;

    ReviewPages(RecordPages records, RecordWords words, Rubrics rubrics, Passkeys passkeys) {
        this.records = records;
        this.words = words;
        this.rubrics = rubrics;
        this.passkeys = passkeys;
    }

    /** The trainee's own levels stay out of it: they must not colour the supervisor's. */
    ReviewPage of(SigningPreview preview) {
        UUID id = preview.sheet().id();
        return ReviewPage.of(
                preview,
                shown(SheetContent.read(preview.content())),
                preview.obstacles().stream()
                        .map(reason -> Obstacle.of(reason, id, words))
                        .toList());
    }

    /** What to ask the signer's passkeys, to sign the very hash shown; null when there is none to ask. */
    Passkeys.@Nullable Ask ask(SignedIn who, SigningPreview preview) {
        return passkeys.ask(who.accountId(), CanonicalJson.hashBytes(preview.contentHash()))
                .orElse(null);
    }

    /** Line by line where the two differ in words; the hashes of {@code refused} when they do not. */
    StaleData stale(StaleData refused, SheetContent reviewed, SheetContent stored) {
        List<StaleData.Line> lines = shown(reviewed).differences(shown(stored), words.say("signoff.unsaid"));
        return lines.isEmpty() ? refused : new StaleData(refused.back(), lines);
    }

    private RecordPage shown(SheetContent content) {
        Rubric rubric =
                rubrics.byId(content.rubric().id()).orElseThrow(NotFound::new).rubric();
        return records.of(content, rubric, Map.of());
    }
}
