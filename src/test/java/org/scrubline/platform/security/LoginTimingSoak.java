package org.scrubline.platform.security;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Role;
import org.scrubline.support.Medians;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/**
 * How long a refused log-in takes for names there are and names there are not, one after the other. Each name and address
 * is used once, so that the throttle, which would answer sooner, never stands in the way. For a quiet machine.
 */
@ScrublineTest
class LoginTimingSoak {

    private static final int PAIRS = 120;
    private static final int WARM_UP = 20;
    private static final double LIMIT_MS = 5;

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Test
    void theTimeDoesNotTellWhetherAnAccountExists() {
        TestOrganisation organisation = organisations.open();
        List<String> known = IntStream.range(0, PAIRS + WARM_UP)
                .mapToObj(i -> organisation.join("Ansel Verrin", Role.TRAINEE).username())
                .toList();
        List<Double> there = new ArrayList<>();
        List<Double> nobody = new ArrayList<>();
        for (int i = 0; i < known.size(); i++) {
            String fresh = "u" + UUID.randomUUID().toString().substring(0, 12);
            // In turn, so that neither side is always the second.
            boolean knownFirst = i % 2 == 0;
            double first = milliseconds(knownFirst ? known.get(i) : fresh, i);
            double second = milliseconds(knownFirst ? fresh : known.get(i), i);
            if (i >= WARM_UP) {
                there.add(knownFirst ? first : second);
                nobody.add(knownFirst ? second : first);
            }
        }
        Medians medians = Medians.of(there, nobody);
        System.out.println("Log-in timing: " + medians.line());
        assertThat(medians.low()).isGreaterThan(-LIMIT_MS);
        assertThat(medians.high()).isLessThan(LIMIT_MS);
    }

    private double milliseconds(String name, int i) {
        try {
            long before = System.nanoTime();
            mockMvc.perform(post("/login")
                            .param("username", name)
                            .param("password", "not the password")
                            .with(csrf())
                            .with(request -> {
                                request.setRemoteAddr("10.40." + i / 250 + "." + i % 250);
                                return request;
                            }))
                    .andExpect(redirectedUrl("/login?error"));
            return (System.nanoTime() - before) / 1e6;
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }
}
