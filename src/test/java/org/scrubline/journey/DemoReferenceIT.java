package org.scrubline.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The demo's reference cases as its people read them, and its meetings. */
class DemoReferenceIT {

    private static final Pattern FIGURE = Pattern.compile("[+−][0-9.]+");
    private static final Pattern MEETING = Pattern.compile("href=\"/meetings/[0-9a-f]{8}-");

    @Test
    void theDirectorFindsTheHabitsPlantedInTheSupervisors() {
        String page = Visitor.loggedIn(DemoServer.shared(), "delmarr")
                .get("/cohort/reference")
                .body();
        assertThat(page).contains("<b class=\"number\">9</b>", "<b class=\"number\">12</b>");
        assertThat(difference(page, "Dr Hesper Vantrelle")).isNegative();
        assertThat(difference(page, "Dr Ludo Karsenmark")).isPositive();
    }

    @Test
    void aSupervisorReadsTheOwnDifferencesAlone() {
        String page = Visitor.loggedIn(DemoServer.shared(), "vantrelle")
                .get("/my-scoring/reference")
                .body();
        assertThat(page).contains("You scored −").doesNotContain("Karsenmark");
    }

    @Test
    void theCommitteeMetEveryHalfYear() {
        String page = Visitor.loggedIn(DemoServer.shared(), "quillmere")
                .get("/meetings")
                .body();
        assertThat(MEETING.matcher(page).results()).hasSize(4);
    }

    private static double difference(String page, String supervisor) {
        String row = page.substring(page.indexOf(">" + supervisor + "<"));
        Matcher figure = FIGURE.matcher(row);
        assertThat(figure.find()).isTrue();
        return Double.parseDouble(figure.group().replace('−', '-'));
    }
}
