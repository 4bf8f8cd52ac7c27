package org.scrubline.people;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;

/** Says a placement in words. */
@Component
public class PlacementWords {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);

    private final People people;
    private final Wording wording;

    PlacementWords(People people, Wording wording) {
        this.people = people;
        this.wording = wording;
    }

    /** Site, first day, last day, share and what is to be said about it. */
    public List<String> cells(Placement one) {
        return List.of(
                site(one),
                day(one.first()),
                day(one.planned()),
                wording.text("placements.percent", one.share()),
                note(one));
    }

    /** The same in one line. */
    public String said(Placement one) {
        return wording.text("placements.said", site(one), day(one.first()), day(one.last()));
    }

    private String note(Placement one) {
        if (!one.began()) {
            return wording.text("placements.never");
        }
        LocalDate ended = one.endedOn();
        return ended == null ? "" : wording.text("placements.early", day(ended));
    }

    private String site(Placement one) {
        return people.site(one.siteId()).map(Site::name).orElse("");
    }

    private static String day(LocalDate day) {
        return DAY.format(day);
    }
}
