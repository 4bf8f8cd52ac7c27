package org.scrubline.doors;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.platform.jobs.JobsNow;
import org.scrubline.support.TestOrganisations;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.ContextConfiguration;

/** The whole application on a port of its own, with connections to one running provider and a mail server. One context for them all. */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@SpringBootTest(
        webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {
            "spring.datasource.url=test",
            "scrubline.jobs.enabled=false",
            "scrubline.web.origin=http://localhost:8080"
        })
@AutoConfigureMockMvc
@ContextConfiguration(initializers = {RunningProvider.class, RunningMailServer.class})
@Import({TestDatabase.class, TestOrganisations.class, JobsNow.class})
@interface DoorsTest {}
