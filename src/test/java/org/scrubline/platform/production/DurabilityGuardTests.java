package org.scrubline.platform.production;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.UnsafeSettings;
import org.scrubline.support.ScrublineTest;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class DurabilityGuardTests {

    @Autowired
    DurabilityQueries database;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    /** The server of the tests is made for speed, so what is looked for here is really off. */
    @Test
    void aDatabaseThatCouldLoseWhatItStoredIsRefused() {
        transaction.executeWithoutResult(status -> {
            jdbc.sql("set local synchronous_commit = off").update();
            assertThat(database.off()).contains("synchronous_commit");
            assertThatThrownBy(() -> new DurabilityGuard(database).afterPropertiesSet())
                    .isInstanceOf(UnsafeSettings.class)
                    .hasMessageContaining("switch synchronous_commit of the database on");
        });
        transaction.executeWithoutResult(status -> {
            jdbc.sql("set local synchronous_commit = on").update();
            assertThat(database.off()).doesNotContain("synchronous_commit");
        });
    }

    @Test
    void whatIsWrongIsPrintedAsSentencesWithoutAStack() {
        UnsafeSettings unsafe = new UnsafeSettings(List.of("One sentence.", "Another."));
        FailureAnalysis printed = new UnsafeSettingsReport().analyze(new IllegalStateException(unsafe));
        assertThat(printed).isNotNull();
        assertThat(printed.getDescription()).isEqualTo("One sentence.\nAnother.");
        assertThatCode(() -> new UnsafeSettingsReport().analyze(new IllegalStateException()))
                .doesNotThrowAnyException();
    }
}
