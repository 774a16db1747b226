"""The application with routes that echo a payload on the same stack, and its processor time."""

import sys
import time
from pathlib import Path

import uvicorn
from fastapi import Request, Response

from roofing_api.app import app


def echo(payload: Path) -> None:
    """Add a route that answers GET and POST with a file's bytes and does nothing else."""
    body = payload.read_bytes()

    @app.get(f"/echo/{payload.name}")
    async def get() -> Response:
        return Response(body, media_type="application/json")

    @app.post(f"/echo/{payload.name}")
    async def post(request: Request) -> Response:
        await request.body()
        return Response(body, media_type="application/json")


async def cpu() -> float:
    """Give the processor time that this server has used, in seconds."""
    return time.process_time()


if __name__ == "__main__":
    for found in sorted(Path(sys.argv[2]).iterdir()):
        echo(found)
    app.get("/cpu")(cpu)
    uvicorn.run(app, port=int(sys.argv[1]), log_level="warning", access_log=False)
