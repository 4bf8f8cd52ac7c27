package org.scrubline.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.List;
import java.util.Map;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.people.Placement;
import org.scrubline.people.PlacementEntry;
import org.scrubline.people.Placements;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.util.LinkedMultiValueMap;

@ScrublineTest
class PlacementPagesTests {

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Placements placements;

    TestOrganisation organisation;
    SignedIn director;
    SignedIn trainee;
    String site;

    @BeforeEach
    void open() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        site = organisation.site().id().toString();
    }

    @Test
    void aPlacementIsListedByTraineeAndByMonthWithItsShare() throws Exception {
        send("/placements", director, placement("2026-01-01", "2026-03-31", "60"))
                .andExpect(redirectedUrl(
                        "/placements?programme=" + organisation.programme().id()));
        page("/placements?from=2026-01", director)
                .andExpect(content()
                        .string(allOf(
                                containsString("Fenna Hallinor"),
                                containsString("Sankt Orlin Eye Institute"),
                                containsString("1 Jan 2026"),
                                containsString("OEI 60"),
                                not(containsString("??")))));
    }

    @Test
    void daysWithoutASiteBetweenTwoPlacementsAreShown() throws Exception {
        send("/placements", director, placement("2026-01-01", "2026-02-10", "100"));
        send("/placements", director, placement("2026-02-15", "2026-05-31", "100"));
        page("/placements?from=2026-01", director).andExpect(content().string(containsString("gap of 4 days")));
        page("/training/" + trainee.personId(), trainee)
                .andExpect(content()
                        .string(allOf(
                                containsString("Sankt Orlin Eye Institute"),
                                containsString("No site from 11 Feb 2026 to 14 Feb 2026, 4 days."))));
    }

    @Test
    void aSecondPlacementOnADayOfTheFirstIsRefusedAndTheNextDayIsNot() throws Exception {
        send("/placements", director, placement("2026-01-01", "2026-03-31", "100"));
        send("/placements", director, placement("2026-03-31", "2026-06-30", "100"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString(
                                        "The trainee is placed at Sankt Orlin Eye Institute from 2026-01-01 to 2026-03-31."),
                                containsString("value=\"2026-06-30\""))));
        send("/placements", director, placement("2026-04-01", "2026-06-30", "100"))
                .andExpect(status().is3xxRedirection());
    }

    @Test
    void aPlacementThatEndsEarlyKeepsItsRowAndFreesItsDays() throws Exception {
        send("/placements", director, placement("2026-01-01", "2026-06-30", "100"));
        String id = all().get(0).id().toString();
        send("/placements/end", director, Map.of("placement", id, "lastDay", "2026-06-30"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Enter a day from 2025-12-31 to 2026-06-29.")));
        send("/placements/end", director, Map.of("placement", id, "lastDay", "2026-03-31"));
        send("/placements", director, placement("2026-04-01", "2026-06-30", "100"))
                .andExpect(status().is3xxRedirection());
        assertThat(all()).hasSize(2);
        page("/placements", director).andExpect(content().string(containsString("ended early, on 31 Mar 2026")));
    }

    @Test
    void badInputIsNamedFieldByField() throws Exception {
        send("/placements", director, Map.of("trainee", "x", "site", "x", "first", "x", "last", "x", "share", "0"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString("Choose a trainee from the list."),
                                containsString("Choose a site from the list."),
                                containsString("Enter a day from the year 2000 on."),
                                containsString("Enter a whole number from 1 to 100."))));
        assertThat(all()).isEmpty();
    }

    @Test
    void twoAtOnceOnTheSameDaysAreOne() throws Exception {
        PlacementEntry entry =
                new PlacementEntry(trainee.personId().toString(), site, "2026-01-01", "2026-03-31", "100");
        CyclicBarrier together = new CyclicBarrier(2);
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            List<Future<Attempt<Placement>>> running = List.of(
                    threads.submit(() -> placeAt(together, entry)), threads.submit(() -> placeAt(together, entry)));
            for (Future<Attempt<Placement>> one : running) {
                one.get();
            }
        } finally {
            threads.shutdownNow();
        }
        assertThat(all()).hasSize(1);
    }

    private Attempt<Placement> placeAt(CyclicBarrier together, PlacementEntry entry) throws Exception {
        together.await();
        return organisation.in(
                () -> placements.place(director, organisation.programme().id(), entry));
    }

    @Test
    void aSiteIsRenamedAndClosedAndStays() throws Exception {
        send("/sites/name", director, Map.of("renamed", site, "newName", "Sankt Orlin"))
                .andExpect(redirectedUrl("/sites"));
        send("/sites/close", director, Map.of("closed", site, "lastDay", "2026-05-31"))
                .andExpect(redirectedUrl("/sites"));
        page("/sites", director)
                .andExpect(content().string(allOf(containsString("Sankt Orlin"), containsString("2026-05-31"))));
        send("/placements", director, placement("2026-05-01", "2026-06-30", "100"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Sankt Orlin closes after 2026-05-31.")));
        send("/placements", director, placement("2026-05-01", "2026-05-31", "100"))
                .andExpect(status().is3xxRedirection());
        send("/sites/close", director, Map.of("closed", site, "lastDay", ""));
        send("/placements", director, placement("2026-06-01", "2026-06-30", "100"))
                .andExpect(status().is3xxRedirection());
    }

    @Test
    void aSiteIsAddedOnceAndARefusalKeepsWhatWasTyped() throws Exception {
        Map<String, String> second = Map.of("code", "BVD", "name", "Bracken Vale District", "zone", "Europe/London");
        send("/sites", director, second).andExpect(redirectedUrl("/sites"));
        send("/sites", director, second)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString("The site code BVD is taken."),
                                containsString("value=\"Bracken Vale District\""))));
        send("/sites/name", director, Map.of("renamed", site, "newName", " "))
                .andExpect(status().isUnprocessableContent());
        send("/sites/close", director, Map.of("closed", site, "lastDay", "soon"))
                .andExpect(status().isUnprocessableContent());
    }

    @Test
    void forEveryoneElseThereAreNoSuchPages() throws Exception {
        SignedIn stranger = organisations.open().join("Somebody Else", Role.DIRECTOR);
        SignedIn supervisor = organisation.join("Ansel Verrin", Role.SUPERVISOR);
        for (SignedIn who : List.of(trainee, supervisor)) {
            for (String path : List.of("/sites", "/placements", "/scorer-training", "/exposure-plan")) {
                page(path, who).andExpect(status().isNotFound());
            }
        }
        page("/placements?programme=" + organisation.programme().id(), stranger).andExpect(status().isNotFound());
        send("/sites/name", stranger, Map.of("renamed", site, "newName", "Taken over"))
                .andExpect(status().isUnprocessableContent());
        page("/sites", director).andExpect(content().string(not(containsString("Taken over"))));
    }

    private List<Placement> all() {
        return organisation.in(() -> placements.of(organisation.programme().id()));
    }

    private Map<String, String> placement(String first, String last, String share) {
        return Map.of(
                "trainee", trainee.personId().toString(), "site", site, "first", first, "last", last, "share", share);
    }

    private ResultActions page(String path, SignedIn who) throws Exception {
        return mockMvc.perform(get(path).with(LogIn.as(who)));
    }

    private ResultActions send(String path, SignedIn who, Map<String, String> typed) throws Exception {
        LinkedMultiValueMap<String, String> form = new LinkedMultiValueMap<>();
        typed.forEach(form::add);
        return mockMvc.perform(post(path).params(form).with(LogIn.as(who)).with(csrf()));
    }
}
