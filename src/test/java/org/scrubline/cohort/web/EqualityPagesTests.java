package org.scrubline.cohort.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.scrubline.cohort.EqualityReport;
import org.scrubline.cohort.GroupTables;
import org.scrubline.cohort.signal.TraineeCounts;
import org.scrubline.people.Characteristic;
import org.scrubline.people.Characteristics;
import org.scrubline.people.Programme;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@ScrublineTest
class EqualityPagesTests {

    private static final Map<Characteristic, String> WOMAN = Map.of(Characteristic.GENDER, "WOMAN");

    @Autowired
    private MockMvc mvc;

    @Autowired
    private Characteristics characteristics;

    @Autowired
    private EqualityPages pages;

    @Autowired
    private TestOrganisations organisations;

    private TestOrganisation organisation;
    private SignedIn trainee;
    private SignedIn analyst;

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
        trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        analyst = organisation.join("Tamsin Oderlake", Role.ANALYST);
    }

    @Test
    void aSmallProgrammeShowsNoNumberAndSaysWhy() throws Exception {
        say(trainee, WOMAN);

        assertThat(page("/cohort/equality", analyst))
                .contains("Gender", "Every number is hidden here.", "fewer than 5 trainees")
                .doesNotContain("<table", "Hallinor", "Woman", "??");
    }

    @Test
    void aLargeProgrammeShowsItsGroupsAndStillHidesWhatIsSmall() {
        List<TraineeCounts> counts = IntStream.range(0, 60)
                .mapToObj(i -> new TraineeCounts(Integer.toString(i), 1 + i, .2, i == 0 ? .1 : .2))
                .toList();
        Map<String, String> said = IntStream.range(0, 60)
                .filter(i -> i % 5 != 0)
                .boxed()
                .collect(Collectors.toMap(i -> Integer.toString(i), i -> i % 2 == 0 ? "WOMAN" : "MAN"));
        GroupTables groups = GroupTables.of(counts, Characteristic.GENDER.answers(), said, 5);
        Programme programme = organisation.programme();

        List<EqualityPage.Section> sections = pages.page(
                        new EqualityReport(programme, List.of(programme), Map.of(Characteristic.GENDER, groups), 5))
                .sections();

        assertThat(sections.get(0).hidden()).isNull();
        assertThat(texts(sections.get(0).tables().get(0)))
                .contains("Woman 12 12 24", "Another answer, or none 6 6 12", "All who can be compared 30 30 60");
        assertThat(texts(sections.get(0).tables().get(2)).get(0)).startsWith("Woman –");
        assertThat(sections.get(1).hidden()).startsWith("Every number is hidden here.");
    }

    private static List<String> texts(EqualityPage.Table table) {
        return table.view().rows().stream()
                .map(row -> row.stream().map(TableView.Cell::text).collect(Collectors.joining(" ")))
                .toList();
    }

    @ParameterizedTest
    @EnumSource(value = Role.class, mode = EnumSource.Mode.EXCLUDE, names = "ANALYST")
    void nobodyElseReadsIt(Role role) throws Exception {
        SignedIn other = organisation.join("Pell Ormandine", role);
        mvc.perform(get("/cohort/equality").with(LogIn.as(other))).andExpect(status().isNotFound());
        assertThatThrownBy(() -> organisation.in(() -> characteristics.ofTrainees(
                        other, organisation.programme().id())))
                .isInstanceOf(NotFound.class);
    }

    @Test
    void anAnalystOfAnotherProgrammeReadsNothing() throws Exception {
        SignedIn other = organisation.anotherProgramme().join("Silvan Orrery", Role.ANALYST);
        UUID programme = organisation.programme().id();
        mvc.perform(get("/cohort/equality?programme=" + programme).with(LogIn.as(other)))
                .andExpect(status().isNotFound());
    }

    @Test
    void answersAreKeptChangedAndTakenBack() throws Exception {
        mvc.perform(post("/my-answers")
                        .param("GENDER", "WOMAN")
                        .param("AGE", "FROM_30")
                        .with(csrf())
                        .with(LogIn.as(trainee)))
                .andExpect(redirectedUrl("/my-answers"));
        assertThat(page("/my-answers", trainee))
                .contains("selected=\"selected\">Woman")
                .doesNotContain("??");

        mvc.perform(post("/my-answers").param("AGE", "FROM_35").with(csrf()).with(LogIn.as(trainee)));

        assertThat(organisation.in(() -> characteristics.own(trainee)))
                .isEqualTo(Map.of(Characteristic.AGE, "FROM_35"));
        assertThat(organisation.in(() -> characteristics.ofTrainees(
                        analyst, organisation.programme().id())))
                .isEqualTo(Map.of(trainee.personId(), Map.of(Characteristic.AGE, "FROM_35")));
    }

    @Test
    void anUnknownAnswerChangesNothing() throws Exception {
        say(trainee, WOMAN);
        mvc.perform(post("/my-answers")
                        .param("GENDER", "NOT_LISTED")
                        .with(csrf())
                        .with(LogIn.as(trainee)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(result -> assertThat(result.getResponse().getContentAsString())
                        .contains("Choose one of the answers, or none."));
        assertThat(organisation.in(() -> characteristics.own(trainee))).isEqualTo(WOMAN);
    }

    @Test
    void onlyATraineeIsAsked() throws Exception {
        mvc.perform(get("/my-answers").with(LogIn.as(analyst))).andExpect(status().isNotFound());
        assertThatThrownBy(() -> say(analyst, WOMAN)).isInstanceOf(NotFound.class);
    }

    private void say(SignedIn who, Map<Characteristic, String> answers) {
        organisation.in(() -> characteristics.say(who, answers).orThrow());
    }

    private String page(String path, SignedIn who) throws Exception {
        return mvc.perform(get(path).with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }
}
