// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.concurrent.CancellationException;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.ProofImporter;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;

/** Imports a proof, runs every check over it in parallel and gathers one result. The only road to the checks. */
@Component(service = Runner.class)
public final class Runner {
    private final ProofImporter importer;
    private final CheckCatalogue catalogue;

    /** Wired by the framework, or by hand in tests. */
    @Activate
    public Runner(@Reference ProofImporter importer, @Reference CheckCatalogue catalogue) {
        this.importer = importer;
        this.catalogue = catalogue;
    }

    /** A session, for somebody who runs again and again with small changes. */
    public Session session() {
        return new Session(importer, catalogue);
    }

    /**
     * Runs once.
     *
     * @param request which proof, sheets, settings and checks
     * @param watcher told the progress, asked whether to stop
     * @return the result; checks that threw or overran are rows in it
     * @throws ProofException when the file is not a usable proof
     * @throws SheetException when a sheet or a setting cannot be used
     * @throws CancellationException when the watcher said so
     * @throws InterruptedException when this thread was interrupted
     */
    public Result run(RunRequest request, Watcher watcher) throws ProofException, SheetException, InterruptedException {
        return session().run(request, watcher);
    }
}
