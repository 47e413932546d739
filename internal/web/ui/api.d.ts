// The server's interface, from its own description at /openapi.json. Made anew with: npm run api

export interface paths {
    "/api/answers": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What can be asked
         * @description Every question with its inputs, for a form.
         */
        get: operations["list-answers"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/answers/{topic}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * One question, answered
         * @description The bytes of: rodwright answer TOPIC --json.
         */
        post: operations["ask"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/events": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Word of changes
         * @description Server-sent events (HTML Living Standard, 9.2): the number of every piece at first, then of each that changes. Comments keep a silent stream open.
         */
        get: operations["listen"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The pieces of the shop
         * @description Each with its size, weight, price and how its findings stand.
         */
        get: operations["list-pieces"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/book.html": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The plan as a page of its own
         * @description For a stranger who builds the piece; without prices.
         */
        get: operations["get-book-html"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/book.pdf": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The plan as a PDF file
         * @description For a stranger who builds the piece; without prices.
         */
        get: operations["get-book-pdf"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/book/article": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The plan to put into a page
         * @description For a stranger who builds the piece; without prices.
         */
        get: operations["get-book-article"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/build": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Everything derived from a piece
         * @description Without units these are the bytes of: rodwright derive --json.
         */
        get: operations["get-build"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/drawings": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The drawings of a piece
         * @description The views, then every part that is marked out, then how stock is cut and panels are glued up.
         */
        get: operations["list-drawings"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/drawings/{drawing}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * One drawing
         * @description As SVG or as DXF, by the ending of its name.
         */
        get: operations["get-drawing"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/log": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The log of a piece
         * @description Its numbered entries after the given number, in order.
         */
        get: operations["get-log"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/preview": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * What edits would do
         * @description Makes the edits on the piece as it stands and derives it anew. Nothing is stored.
         */
        post: operations["preview"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/sizes": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What can be typed
         * @description The named sizes with their formulas, and every other value of the document that is typed, each with the path that an edit names.
         */
        get: operations["get-sizes"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/solids": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The piece in space
         * @description Every body as a box, a cylinder or a slab with openings, in millimetres.
         */
        get: operations["get-solids"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/text": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The document of a piece
         * @description As it stands after its last entry.
         */
        get: operations["get-text"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
}
export type webhooks = Record<string, never>;
export interface components {
    schemas: {
        BoxBody: {
            max: number[] | null;
            min: number[] | null;
        };
        Cut: {
            /** Format: int64 */
            count: number;
            /** Format: double */
            from: number;
            name: string;
            tag: string;
            /** Format: double */
            to: number;
            what: string;
        };
        CylinderBody: {
            /** @description One end of its axis. */
            a: number[] | null;
            b: number[] | null;
            /** Format: double */
            radius: number;
        };
        Days: {
            /** Format: int64 */
            from: number;
            /** Format: int64 */
            to: number;
        };
        DrawingLine: {
            /** @description What it shows, for who can't see it. */
            alt: string;
            id: string;
            /** @enum {string} */
            kind: "view" | "part" | "cut" | "glue";
            /**
             * Format: int64
             * @description 1 : per is its scale on paper.
             */
            per: number;
            title: string;
        };
        DrawingsBody: {
            /** @description In the book's order. */
            drawings: components["schemas"]["DrawingLine"][] | null;
        };
        EditBody: {
            /** @description As in sizes and fields: sizes/low level. */
            path: string;
            /** @description As it is typed: 14 3/8. */
            value: string;
        };
        Entry: {
            actor: string;
            /** Format: date-time */
            at: string;
            /** Format: int64 */
            base: number;
            id: string;
            kind: string;
            names?: string;
            new?: string;
            /** Format: int64 */
            number: number;
            old?: string;
            path?: string;
        };
        FieldBody: {
            /** @description What it is a value of, in words. */
            group: string;
            /** @enum {string} */
            kind: "length" | "count" | "word";
            label: string;
            /** @description What an edit names: panels/deep board/thickness. */
            path: string;
            /** @description As it is written. */
            value: string;
        };
        InputBody: {
            choices?: string[] | null;
            /** @description What stands for it when left out. */
            default?: string;
            example: string;
            help: string;
            name: string;
            optional: boolean;
            takes: string;
            units?: string;
        };
        Line: {
            /**
             * Format: int64
             * @description When, in milliseconds since 1970, UTC.
             */
            changed: number;
            currency: string;
            /**
             * Format: int64
             * @description Calendar days of the work.
             */
            days: number | null;
            /**
             * Format: int64
             * @description How many findings fail.
             */
            failing: number;
            /** @description To which the piece is drawn: 1/16, 1 mm; what it is shown in. */
            fineness?: string;
            id: string;
            /** Format: double */
            massKg: number | null;
            name: string;
            /**
             * Format: int64
             * @description Of its last entry.
             */
            number: number;
            /** @description Why nothing can be derived from its document. */
            problem?: string;
            /** @description Along, across and up, in millimetres. */
            size: number[] | null;
            /** Format: int64 */
            tight: number;
            /**
             * Format: int64
             * @description Of the quote, in cents; null where it is not known.
             */
            total: number | null;
            /** Format: int64 */
            unknown: number;
            /** @enum {string} */
            worst: "stands" | "tight" | "fails" | "unknown";
        };
        LogOutBody: {
            entries: components["schemas"]["Entry"][] | null;
            /**
             * Format: int64
             * @description Of the last entry there is.
             */
            number: number;
        };
        Made: {
            added: string[] | null;
            gone: string[] | null;
        };
        Mass: {
            /** Format: double */
            from: number;
            /** Format: double */
            to: number;
        };
        Money: {
            currency: string;
            /** Format: int64 */
            from: number | null;
            /** Format: int64 */
            to: number | null;
        };
        OpeningBody: {
            /**
             * Format: double
             * @description From the underside; 0 goes through.
             */
            depth: number;
            max: number[] | null;
            /** @description In plan. */
            min: number[] | null;
            /**
             * Format: double
             * @description Of its corners.
             */
            radius: number;
        };
        PieceEvent: {
            /**
             * Format: int64
             * @description Of its last entry.
             */
            number: number;
            /** @description Its id. */
            piece: string;
        };
        PieceListBody: {
            /** @description Those changed last first. */
            pieces: components["schemas"]["Line"][] | null;
        };
        Place: {
            /** Format: int64 */
            column: number;
            /** @description The piece's name. */
            file: string;
            /** Format: int64 */
            line: number;
        };
        PreviewBody: {
            /** @description As in get-build. */
            build: Record<string, never>;
            /**
             * Format: int64
             * @description Of the last entry of the piece that the edits were tried on.
             */
            number: number;
            /** @description What differs from the piece as it stands. */
            ripple: components["schemas"]["Ripple"];
            solids: components["schemas"]["SolidsBody"];
            views: components["schemas"]["ViewsBody"];
        };
        PreviewInBody: {
            /**
             * Format: int64
             * @description The number of the last entry that the asker has seen.
             */
            base: number;
            /** @description Made one after the other. */
            edits: components["schemas"]["EditBody"][] | null;
        };
        Problem: {
            /** @description What is wrong, in words for a person. */
            detail: string;
            /** @description The value that is wrong: a path in the document, or a name in the request. */
            path?: string;
            /** @description Where in the document it is. */
            place?: components["schemas"]["Place"];
            /** @description What would be right. */
            right?: string;
            /**
             * Format: int64
             * @description The status of the answer.
             */
            status: number;
            /** @description The status in words. */
            title: string;
            /** @description What kind of problem it is; about:blank: the status says it. */
            type: string;
        };
        Ripple: {
            boards: components["schemas"]["Stock"][] | null;
            cuts: components["schemas"]["Cut"][] | null;
            days: components["schemas"]["Days"];
            findings: components["schemas"]["Turn"][] | null;
            massKg: components["schemas"]["Mass"];
            money: components["schemas"]["Money"];
            parts: components["schemas"]["Made"];
        };
        SizeBody: {
            /** @description As it is written. */
            formula: string;
            name: string;
            note: string;
            /** @enum {string} */
            origin: "assumed" | "client" | "measured" | "rule" | "standard";
            /** @description What an edit names: sizes/low level. */
            path: string;
            /** @description The value by the tape; ≈ marks one that is rounded. */
            text: string;
            /** @description The names of the sizes that its formula uses. */
            uses: string[] | null;
            /**
             * Format: double
             * @description In millimetres; one measured on site wins over the formula.
             */
            value: number;
        };
        SizesBody: {
            /** @description Every other value that is typed, in the order of the document; those that only name a size are left out. */
            fields: components["schemas"]["FieldBody"][] | null;
            /** @description The named sizes, in the order of the document. */
            sizes: components["schemas"]["SizeBody"][] | null;
        };
        SlabBody: {
            max: number[] | null;
            min: number[] | null;
            openings: components["schemas"]["OpeningBody"][] | null;
        };
        SolidBody: {
            box?: components["schemas"]["BoxBody"];
            cylinder?: components["schemas"]["CylinderBody"];
            /** @enum {string} */
            kind: "panel" | "stick" | "fitting" | "foot" | "held";
            name: string;
            slab?: components["schemas"]["SlabBody"];
            /** @description Of the physical part; empty for what is held. */
            tag: string;
        };
        SolidsBody: {
            max: number[] | null;
            /** @description Of the box round the piece without what it holds. */
            min: number[] | null;
            solids: components["schemas"]["SolidBody"][] | null;
        };
        Stock: {
            /** Format: double */
            from: number;
            item: string;
            /** Format: double */
            to: number;
            unit: string;
        };
        TopicBody: {
            /** @description The names of what is answered, the main one first. */
            answers: string[] | null;
            /** @description Inputs that go together, each as it is typed. */
            example: {
                [key: string]: string;
            };
            inputs: components["schemas"]["InputBody"][] | null;
            question: string;
            /** @description Which inputs go together, in words. */
            rules: string[] | null;
            topic: string;
        };
        TopicsOutBody: {
            topics: components["schemas"]["TopicBody"][] | null;
        };
        Turn: {
            check: string;
            from: string;
            place: string;
            to: string;
        };
        ViewsBody: {
            /** @description SVG, to put into a page. */
            front: string;
            /** @description From the right. */
            side: string;
            top: string;
        };
    };
    responses: never;
    parameters: never;
    requestBodies: never;
    headers: never;
    pathItems: never;
}
export type $defs = Record<string, never>;
export interface operations {
    "list-answers": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TopicsOutBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    ask: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                topic: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": {
                    [key: string]: string;
                };
            };
        };
        responses: {
            /** @description The answer, with formulas, sources and cautions. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": Record<string, never>;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    listen: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "text/event-stream": {
                        data: components["schemas"]["PieceEvent"];
                        /**
                         * @description The event name.
                         * @constant
                         */
                        event: "piece";
                        /** @description The event ID. */
                        id?: number;
                        /** @description The retry time in milliseconds. */
                        retry?: number;
                    }[];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "list-pieces": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PieceListBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-book-html": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description Left out, A4. */
                paper?: "a4" | "letter";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The plan. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "text/html": string;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-book-pdf": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description Left out, A4. */
                paper?: "a4" | "letter";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The plan. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": string;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-book-article": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description Left out, A4. */
                paper?: "a4" | "letter";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The plan. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "text/html": string;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-build": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The build. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": Record<string, never>;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "list-drawings": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description The width there is on paper, in millimetres; left out, that of a book's sheet. */
                width?: number;
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DrawingsBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-drawing": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description The width there is on paper, in millimetres; left out, that of a book's sheet. */
                width?: number;
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
                /** @description The drawing's id, with .svg (to put into a page) or .dxf (R12, full size in millimetres) behind it. */
                drawing: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The drawing; image/vnd.dxf where it is asked for. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "image/svg+xml": string;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-log": {
        parameters: {
            query?: {
                /** @description The number of the last entry that the asker has. */
                after?: number;
            };
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LogOutBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    preview: {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PreviewInBody"];
            };
        };
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PreviewBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-sizes": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SizesBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-solids": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SolidsBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-text": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The document, UTF-8. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "text/plain": string;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
}
