package org.scrubline.doors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.Medians;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * How long the page of whoever forgot a password takes for names and addresses there are and there are not, one after the
 * other. Each name and each place is used once, so that nothing is slowed. For a quiet machine.
 */
@DoorsTest
class HelpTimingSoak {

    private static final int PAIRS = 300;
    private static final int WARM_UP = 60;
    private static final double LIMIT_MS = 5;

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestOrganisation organisation;
    List<SignedIn> people;
    int asked;

    @BeforeEach
    void join() {
        organisation = organisations.open();
        people = IntStream.range(0, PAIRS + WARM_UP)
                .mapToObj(i -> organisation.joinNew("Ansel Verrin", Role.TRAINEE))
                .toList();
    }

    @AfterEach
    void takeOffTheQueue() {
        jdbc.sql("delete from scheduled_tasks where task_name = 'account-mail'").update();
    }

    @Test
    void theTimeDoesNotTellWhetherSomebodyHasThatName() {
        compare(
                "names",
                SignedIn::username,
                () -> "u" + UUID.randomUUID().toString().substring(0, 12));
    }

    @Test
    void theTimeDoesNotTellWhetherAnAddressIsOnFile() {
        people.forEach(one -> organisation.in(() -> transaction.execute(
                status -> jdbc.sql("insert into login_address (account_id, confirmed, address, set_at)"
                                + " values (:account, true, :address, now())")
                        .param("account", one.accountId())
                        .param("address", address(one.username()))
                        .update())));
        compare(
                "addresses",
                one -> address(one.username()),
                () -> address("u" + UUID.randomUUID().toString().substring(0, 12)));
    }

    private static String address(String name) {
        return name + "@hospital.example";
    }

    private void compare(String what, Function<SignedIn, String> of, Supplier<String> fresh) {
        List<Double> there = new ArrayList<>();
        List<Double> nobody = new ArrayList<>();
        for (int i = 0; i < people.size(); i++) {
            String known = of.apply(people.get(i));
            String unknown = fresh.get();
            // In turn, so that neither side is always the second.
            boolean knownFirst = i % 2 == 0;
            double first = milliseconds(knownFirst ? known : unknown);
            double second = milliseconds(knownFirst ? unknown : known);
            if (i >= WARM_UP) {
                there.add(knownFirst ? first : second);
                nobody.add(knownFirst ? second : first);
            }
        }
        Medians medians = Medians.of(there, nobody);
        System.out.println("Forgotten password, " + what + ": " + medians.line());
        assertThat(medians.low()).isGreaterThan(-LIMIT_MS);
        assertThat(medians.high()).isLessThan(LIMIT_MS);
    }

    private double milliseconds(String typed) {
        int place = asked++;
        try {
            long before = System.nanoTime();
            mockMvc.perform(post("/login/help")
                            .param("name", typed)
                            .with(csrf())
                            .with(request -> {
                                request.setRemoteAddr("10.41." + place / 250 + "." + place % 250);
                                return request;
                            }))
                    .andExpect(redirectedUrl("/login/new-password?asked"));
            return (System.nanoTime() - before) / 1e6;
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }
}
